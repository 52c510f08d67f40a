package castwell.analysis.compare;

import castwell.analysis.season.StateCurve;
import castwell.analysis.statistic.Holm;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.TMixture;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Bows in the order of their cast on any day, each at its own draw weight, with which of them
 * differ and which can't be told apart.
 *
 * @param bows the bows, the fastest first
 * @param pairs each pair of bows once
 * @param groups the largest sets of bows within which no pair differs, the fastest first; a bow may
 *     be in several
 */
public record CastRanking(List<Entry> bows, List<Pair> pairs, List<List<String>> groups) {
  private static final double ALPHA = 0.05;

  /**
   * A bow to be ranked.
   *
   * @param curve what its state of now does, all bows' of one season
   * @param drawWeightN its draw weight, above 0
   * @param drawWeightUN that weight's standard uncertainty, its scale's
   */
  public record Bow(String name, StateCurve curve, double drawWeightN, double drawWeightUN) {
    private TMixture cast(double gpp) {
      return curve.cast(gpp, drawWeightN, drawWeightUN);
    }

    private TMixture less(Bow other, double gpp) {
      return curve.castLess(
          gpp, drawWeightN, drawWeightUN, other.curve, other.drawWeightN, other.drawWeightUN);
    }
  }

  /**
   * @param logCast the natural log of the cast in m/s
   */
  public record Entry(String bow, TMixture logCast) {
    /** In m/s. */
    public Estimate castMps(double coverage) {
      return logCast.estimate(coverage).rising(Math::exp);
    }
  }

  /**
   * Two bows and how their casts differ: told apart just where the interval leaves out 0.
   *
   * @param share the faster cast less the slower one, as a share of the slower
   * @param differenceMps the same in m/s, with the slower cast taken as it stands
   * @param adjustedP the p value, adjusted by Holm over all pairs
   * @param coverage of both intervals, at which Holm's rule looked at this pair
   */
  public record Pair(
      String faster,
      String slower,
      Estimate share,
      Estimate differenceMps,
      double adjustedP,
      double coverage) {
    public boolean differs() {
      return adjustedP < ALPHA;
    }
  }

  /** Two bows not yet judged: the log cast of the faster less that of the slower. */
  private record Raw(Entry faster, Entry slower, TMixture logLess) {
    Pair judged(double adjustedP, double coverage) {
      Estimate share = logLess.estimate(coverage).rising(Math::expm1);
      double mps = Math.exp(slower.logCast.value());
      return new Pair(
          faster.bow, slower.bow, share, share.rising(s -> s * mps), adjustedP, coverage);
    }
  }

  /**
   * @param gpp grains per pound of draw weight, above 0
   */
  public static CastRanking of(List<Bow> bows, double gpp) {
    List<Bow> sorted =
        bows.stream()
            .sorted(Comparator.comparingDouble((Bow bow) -> -bow.cast(gpp).value()))
            .toList();
    List<Entry> entries = sorted.stream().map(bow -> new Entry(bow.name(), bow.cast(gpp))).toList();
    List<Raw> raw = new ArrayList<>();
    for (int i = 0; i < sorted.size(); i++) {
      for (int j = i + 1; j < sorted.size(); j++) {
        TMixture less = sorted.get(i).less(sorted.get(j), gpp);
        raw.add(new Raw(entries.get(i), entries.get(j), less));
      }
    }
    List<Pair> pairs = judged(raw);
    return new CastRanking(entries, pairs, groups(entries, pairs));
  }

  private static List<Pair> judged(List<Raw> raw) {
    double[] p = raw.stream().mapToDouble(pair -> pair.logLess.pValue()).toArray();
    double[] adjusted = Holm.adjust(p);
    double[] levels = Holm.levels(ALPHA, p);
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < p.length; i++) {
      pairs.add(raw.get(i).judged(adjusted[i], 1 - levels[i]));
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
