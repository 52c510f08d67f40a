package castwell.analysis.statistic;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/**
 * The rank test whether groups differ (Kruskal and Wallis, J. Am. Stat. Assoc. 47 (1952) 583): H =
 * (n - 1) times the share of the ranks' variance that lies between groups, which allows for equal
 * values.
 *
 * @param h the statistic H, without a unit; NaN where all values are equal or there is but one
 *     group
 * @param pValue the share of all orders with an H at least as large; 1 where H is NaN
 * @param exact whether all orders were counted, as up to nine values are; for more, H is taken as
 *     chi-squared
 */
public record RankGroups(double h, double pValue, boolean exact) {

  /**
   * @param group each value's group, numbered from 0 without a gap
   */
  public static RankGroups test(double[] values, int[] group) {
    double[] ranks = Ranks.of(values);
    int groups = Arrays.stream(group).max().orElse(-1) + 1;
    double h = groups < 2 ? Double.NaN : h(ranks, group, groups);
    if (Double.isNaN(h)) {
      return new RankGroups(h, 1, true);
    }
    if (values.length <= Permutations.MOST) {
      return new RankGroups(h, Permutations.share(ranks, r -> h(r, group, groups)), true);
    }
    double p = 1 - new ChiSquaredDistribution(groups - 1.0).cumulativeProbability(h);
    return new RankGroups(h, p, false);
  }

  private static double h(double[] ranks, int[] group, int groups) {
    double mean = Mean.of(ranks);
    double[] sums = new double[groups];
    int[] counts = new int[groups];
    double total = 0;
    for (int i = 0; i < ranks.length; i++) {
      sums[group[i]] += ranks[i] - mean;
      counts[group[i]]++;
      total += (ranks[i] - mean) * (ranks[i] - mean);
    }
    double between = 0;
    for (int g = 0; g < groups; g++) {
      between += sums[g] * sums[g] / counts[g];
    }
    return (ranks.length - 1) * between / total;
  }
}
