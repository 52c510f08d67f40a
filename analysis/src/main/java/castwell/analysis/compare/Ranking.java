package castwell.analysis.compare;

import castwell.analysis.statistic.Holm;
import castwell.analysis.uncertainty.Quantity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Bows in the order of their cast, with which of them differ and which can't be told apart.
 *
 * @param bows the bows, the fastest first
 * @param pairs each pair of bows once
 * @param groups the largest sets of bows within which no pair differs, the fastest first; a bow may
 *     be in several
 */
public record Ranking(List<Entry> bows, List<Pair> pairs, List<List<String>> groups) {
  private static final double ALPHA = 0.05;

  public record Entry(String bow, Quantity castMps) {}

  /**
   * Two bows and how their casts differ.
   *
   * @param differenceMps the faster less the slower cast; uncertainty that both share cancels
   * @param adjustedP the p value, adjusted by Holm over all pairs
   */
  public record Pair(String faster, String slower, Quantity differenceMps, double adjustedP) {
    public boolean differs() {
      return adjustedP < ALPHA;
    }
  }

  public static Ranking of(List<Entry> entries) {
    List<Entry> bows = new ArrayList<>(entries);
    bows.sort(Comparator.comparingDouble(entry -> -entry.castMps().value()));
    List<Pair> pairs = pairs(bows);
    return new Ranking(List.copyOf(bows), pairs, groups(bows, pairs));
  }

  private static List<Pair> pairs(List<Entry> bows) {
    List<Pair> raw = new ArrayList<>();
    for (int i = 0; i < bows.size(); i++) {
      for (int j = i + 1; j < bows.size(); j++) {
        Quantity difference = bows.get(i).castMps().minus(bows.get(j).castMps());
        raw.add(new Pair(bows.get(i).bow(), bows.get(j).bow(), difference, difference.pValue()));
      }
    }
    double[] adjusted = Holm.adjust(raw.stream().mapToDouble(Pair::adjustedP).toArray());
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < adjusted.length; i++) {
      Pair pair = raw.get(i);
      pairs.add(new Pair(pair.faster(), pair.slower(), pair.differenceMps(), adjusted[i]));
    }
    return List.copyOf(pairs);
  }

  private static List<List<String>> groups(List<Entry> bows, List<Pair> pairs) {
    return AlikeGroups.of(
        bows.stream().map(Entry::bow).toList(),
        pairs.stream()
            .filter(Pair::differs)
            .map(pair -> new AlikeGroups.Apart(pair.faster(), pair.slower()))
            .toList());
  }
}
