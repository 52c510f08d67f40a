package castwell.analysis.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A season's cells by number: a session's cells lie together, and in it a bow's (a block). A pair
 * is a bow state with an arrow; an effect is an arrow on a tune of a bow.
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

  final double leastX;
  final double mostX;

  Layout(List<SeasonCell> list) {
    if (list.isEmpty()) {
      throw new IllegalArgumentException("a season has cells");
    }
    cells = new SeasonCell[list.size()];
    given = new int[cells.length];
    bow = new int[cells.length];
    pair = new int[cells.length];
    list.forEach(cell -> bows.number(cell.bow()));
    list.forEach(cell -> states.number(cell.state()));
    List<List<List<Integer>>> sessions = sessions(list);
    sessionStart = new int[sessions.size() + 1];
    sessionU = new double[sessions.size()];
    int[] starts = new int[cells.length + 1];
    int block = 0;
    int at = 0;
    for (int j = 0; j < sessions.size(); j++) {
      for (List<Integer> members : sessions.get(j)) {
        starts[block++] = at;
        for (int c : members) {
          given[at] = c;
          cells[at++] = list.get(c);
        }
      }
      sessionStart[j + 1] = block;
      sessionU[j] = cells[at - 1].setUpU();
    }
    starts[block] = at;
    blockStart = Arrays.copyOf(starts, block + 1);
    Names pairs = new Names();
    Names effectNames = new Names();
    List<SeasonCell> firsts = new ArrayList<>();
    for (int c = 0; c < cells.length; c++) {
      bow[c] = bows.number(cells[c].bow());
      pair[c] = pairs.number(List.of(cells[c].state(), cells[c].arrow()));
      if (pair[c] == firsts.size()) {
        firsts.add(cells[c]);
      }
    }
    arrows = new Arrows(firsts);
    pairState = new int[firsts.size()];
    pairEffect = new int[firsts.size()];
    stateBow = new int[states.size()];
    x = new double[firsts.size()];
    for (int i = 0; i < x.length; i++) {
      SeasonCell cell = firsts.get(i);
      pairState[i] = states.number(cell.state());
      pairEffect[i] = effectNames.number(List.of(cell.bow(), cell.tune(), cell.arrow()));
      stateBow[pairState[i]] = bowOf(cell, firsts);
      x[i] = cell.massKg() / arrows.meanKg - 1;
    }
    effects = effectNames.size();
    leastX = Arrays.stream(x).min().orElseThrow();
    mostX = Arrays.stream(x).max().orElseThrow();
  }

  private int bowOf(SeasonCell cell, List<SeasonCell> others) {
    for (SeasonCell other : others) {
      if (other.state().equals(cell.state()) && !other.bow().equals(cell.bow())) {
        throw new IllegalArgumentException(cell.state() + " can't be a state of two bows");
      }
    }
    return bows.number(cell.bow());
  }

  private static List<List<List<Integer>>> sessions(List<SeasonCell> cells) {
    Map<String, Map<String, List<Integer>>> sessions = new LinkedHashMap<>();
    for (int c = 0; c < cells.size(); c++) {
      sessions
          .computeIfAbsent(cells.get(c).session(), name -> new LinkedHashMap<>())
          .computeIfAbsent(cells.get(c).bow(), name -> new ArrayList<>())
          .add(c);
    }
    return sessions.values().stream().map(blocks -> List.copyOf(blocks.values())).toList();
  }

  int pairs() {
    return x.length;
  }

  int sessions() {
    return sessionU.length;
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
