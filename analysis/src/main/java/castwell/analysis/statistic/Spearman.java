package castwell.analysis.statistic;

import castwell.analysis.uncertainty.StudentT;

/**
 * Spearman's rank correlation: Pearson's correlation of the ranks, where equal values share the
 * mean of their ranks (Kendall and Gibbons, Rank Correlation Methods, from memory).
 *
 * @param rho the correlation, between -1 and 1; NaN of fewer than three pairs and where one side
 *     has no spread
 * @param pValue the two-sided p value, which is the share of all orders with a correlation at least
 *     as far from 0; 1 where rho is NaN
 * @param exact whether all orders were counted, as up to nine values are; for more, t = rho sqrt((n
 *     - 2) / (1 - rho2)) is taken as Student's t
 */
public record Spearman(double rho, double pValue, boolean exact) {

  public static Spearman test(double[] x, double[] y) {
    double[] a = Ranks.of(x);
    double[] b = Ranks.of(y);
    int n = x.length;
    double rho = n < 3 ? Double.NaN : pearson(a, b);
    if (Double.isNaN(rho)) {
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
