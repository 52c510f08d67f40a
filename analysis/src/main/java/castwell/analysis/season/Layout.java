package castwell.analysis.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * A season's cells by number: a session's cells lie together, and in it a bow's (a block), sorted
 * by pair. A pair is a bow state with an arrow; an effect is an arrow on a tune of a bow.
 */
final class Layout {
  final Names bows = new Names();
  final Names states = new Names();
  final SeasonCell[] cells;

  /** The place among the cells given of each of {@link #cells}. */
  final int[] given;

  final int[] bow;
  final int[] pair;

  /** The first cell of each block, then the number of cells. */
  final int[] blockStart;

  /** The first block of each session, then the number of blocks. */
  final int[] sessionStart;

  final double[] sessionU;
  final int[] pairState;
  final int[] pairEffect;
  final int[] stateBow;
  final int effects;
  final Arrows arrows;

  /** m / mean - 1 of each pair's arrow. */
  final double[] x;

  /** The conditions that are looked at, and how far each lies above its mean, by session. */
  final List<Covariate> covariates;

  final double[][] z;
  final double leastX;
  final double mostX;

  Layout(List<SeasonCell> list, List<Covariate> conditions) {
    if (list.isEmpty()) {
      throw new IllegalArgumentException("a season has cells");
    }
    long[] pairKeys = pairKeys(list);
    long[] keys = Arrays.stream(pairKeys).sorted().distinct().toArray();
    int n = pairKeys.length;
    int[] pairs = new int[n];
    Arrays.setAll(pairs, c -> Arrays.binarySearch(keys, pairKeys[c]));
    given = order(list, pairs, keys.length);
    cells = new SeasonCell[n];
    bow = new int[n];
    pair = new int[n];
    SeasonCell[] ofPair = new SeasonCell[keys.length];
    for (int c = 0; c < n; c++) {
      cells[c] = list.get(given[c]);
      bow[c] = bows.number(cells[c].bow());
      pair[c] = pairs[given[c]];
      ofPair[pair[c]] = ofPair[pair[c]] == null ? cells[c] : ofPair[pair[c]];
    }
    int[] blocks = new int[n + 1];
    int[] sessions = new int[n + 1];
    double[] us = new double[n];
    int block = 0;
    int session = 0;
    for (int c = 0; c < n; c++) {
      boolean isNext = c == 0 || !cells[c].session().equals(cells[c - 1].session());
      if (isNext) {
        us[session] = cells[c].setUpU();
        sessions[session++] = block;
      }
      if (isNext || bow[c] != bow[c - 1]) {
        blocks[block++] = c;
      } else if (pair[c] == pair[c - 1]) {
        throw new IllegalArgumentException("two cells of " + cells[c].state() + " in one session");
      }
    }
    blocks[block] = n;
    sessions[session] = block;
    blockStart = Arrays.copyOf(blocks, block + 1);
    sessionStart = Arrays.copyOf(sessions, session + 1);
    sessionU = Arrays.copyOf(us, session);
    arrows = new Arrows(List.of(ofPair));
    pairState = new int[ofPair.length];
    pairEffect = new int[ofPair.length];
    stateBow = new int[states.size()];
    Arrays.fill(stateBow, -1);
    x = new double[ofPair.length];
    Names effectNames = new Names();
    for (int i = 0; i < x.length; i++) {
      SeasonCell cell = ofPair[i];
      pairState[i] = states.number(cell.state());
      pairEffect[i] = effectNames.number(List.of(cell.bow(), cell.tune(), cell.arrow()));
      x[i] = cell.massKg() / arrows.meanKg - 1;
      own(pairState[i], cell);
    }
    effects = effectNames.size();
    covariates = conditions.stream().filter(Covariate::isTold).toList();
    z = new double[session][covariates.size()];
    for (int v = 0; v < covariates.size(); v++) {
      double mean = covariates.get(v).mean();
      for (int j = 0; j < session; j++) {
        z[j][v] = covariates.get(v).bySession().getOrDefault(sessionName(j), mean) - mean;
      }
    }
    leastX = Arrays.stream(x).min().orElseThrow();
    mostX = Arrays.stream(x).max().orElseThrow();
  }

  /** By bow, then state, then arrow. */
  private long[] pairKeys(List<SeasonCell> list) {
    Names arrowNames = new Names();
    for (SeasonCell cell : list) {
      bows.number(cell.bow());
      states.number(cell.state());
      arrowNames.number(cell.arrow());
    }
    long perBow = (long) states.size() * arrowNames.size();
    return list.stream()
        .mapToLong(
            cell ->
                bows.number(cell.bow()) * perBow
                    + (long) states.number(cell.state()) * arrowNames.size()
                    + arrowNames.number(cell.arrow()))
        .toArray();
  }

  /** By session, then pair, so that a session's pairs come in rising order. */
  private static int[] order(List<SeasonCell> list, int[] pairs, long pairCount) {
    Names sessionNames = new Names();
    long n = pairs.length;
    return IntStream.range(0, pairs.length)
        .mapToLong(c -> (sessionNames.number(list.get(c).session()) * pairCount + pairs[c]) * n + c)
        .sorted()
        .mapToInt(key -> (int) (key % n))
        .toArray();
  }

  private void own(int state, SeasonCell cell) {
    int number = bows.number(cell.bow());
    if (stateBow[state] >= 0 && stateBow[state] != number) {
      throw new IllegalArgumentException(cell.state() + " can't be a state of two bows");
    }
    stateBow[state] = number;
  }

  int pairs() {
    return x.length;
  }

  int sessions() {
    return sessionU.length;
  }

  String sessionName(int session) {
    return cells[blockStart[sessionStart[session]]].session();
  }

  int stateCount() {
    return states.size();
  }

  /** Numbers for names, from 0 on, in the order in which they first come. */
  static final class Names {
    private final Map<Object, Integer> numbers = new HashMap<>();
    private final List<Object> names = new ArrayList<>();

    int number(Object name) {
      Integer known = numbers.putIfAbsent(name, names.size());
      if (known == null) {
        names.add(name);
        return names.size() - 1;
      }
      return known;
    }

    /** -1 for a name that never came. */
    int find(Object name) {
      return numbers.getOrDefault(name, -1);
    }

    int size() {
      return names.size();
    }
  }
}
