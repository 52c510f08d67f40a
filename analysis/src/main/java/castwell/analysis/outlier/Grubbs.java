package castwell.analysis.outlier;

import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.uncertainty.StudentT;

/**
 * Grubbs' test for one outlier in a normal set (Technometrics 11 (1969) 1; NIST/SEMATECH
 * e-Handbook, 1.3.5.17.1): G = max |x - mean| / s. The critical value is (n - 1) / sqrt n sqrt(t2 /
 * (n - 2 + t2)), with t the Student quantile with n - 2 degrees of freedom at 1 - alpha / n for one
 * side, 1 - alpha / 2n for both.
 *
 * @param statistic G; NaN of fewer than three values
 * @param index the index of the value farthest from the mean
 */
public record Grubbs(
    double statistic, int index, double criticalOneSided, double criticalTwoSided) {

  public static Grubbs test(double[] values, double alpha) {
    int n = values.length;
    if (n < 3) {
      return new Grubbs(Double.NaN, 0, Double.NaN, Double.NaN);
    }
    double mean = Mean.of(values);
    int farthest = 0;
    for (int i = 1; i < n; i++) {
      if (Math.abs(values[i] - mean) > Math.abs(values[farthest] - mean)) {
        farthest = i;
      }
    }
    double g = Math.abs(values[farthest] - mean) / StandardDeviation.of(values);
    return new Grubbs(g, farthest, critical(n, 2 * alpha), critical(n, alpha));
  }

  public boolean isOutlier() {
    return statistic > criticalTwoSided;
  }

  private static double critical(int n, double alphaBothSides) {
    double t = StudentT.twoSided(1 - alphaBothSides / n, n - 2.0);
    return (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
  }
}
