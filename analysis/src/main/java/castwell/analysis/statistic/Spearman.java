package castwell.analysis.statistic;

import castwell.analysis.uncertainty.StudentT;

/**
 * Spearman's rank correlation: Pearson's of the ranks, equal values sharing the mean of theirs
 * (Kendall and Gibbons, Rank Correlation Methods, from memory).
 *
 * @param rho between -1 and 1; NaN where one side has no spread
 * @param pValue two-sided: the share of all orders with a correlation at least as far from 0; 1
 *     where rho is NaN
 * @param exact whether all orders were counted, as up to nine values are; beyond, t = rho sqrt((n -
 *     2) / (1 - rho2)) is taken for Student's
 */
public record Spearman(double rho, double pValue, boolean exact) {

  /** Fewer than three pairs have a p of 1. */
  public static Spearman test(double[] x, double[] y) {
    double[] a = Ranks.of(x);
    double[] b = Ranks.of(y);
    double rho = pearson(a, b);
    int n = x.length;
    if (Double.isNaN(rho) || n < 3) {
      return new Spearman(rho, 1, true);
    }
    if (n <= Permutations.MOST) {
      return new Spearman(rho, Permutations.share(b, r -> Math.abs(pearson(a, r))), true);
    }
    double t = rho * Math.sqrt((n - 2) / (1 - rho * rho));
    return new Spearman(rho, StudentT.pValue(t, n - 2), false);
  }

  private static double pearson(double[] a, double[] b) {
    double meanA = Mean.of(a);
    double meanB = Mean.of(b);
    double ab = 0;
    double aa = 0;
    double bb = 0;
    for (int i = 0; i < a.length; i++) {
      ab += (a[i] - meanA) * (b[i] - meanB);
      aa += (a[i] - meanA) * (a[i] - meanA);
      bb += (b[i] - meanB) * (b[i] - meanB);
    }
    return ab / Math.sqrt(aa * bb);
  }
}
