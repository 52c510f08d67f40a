package castwell.analysis.outlier;

import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.uncertainty.StudentT;
import java.util.ArrayList;
import java.util.List;

/**
 * Rosner's generalized extreme studentized deviate test for up to r outliers in one normal set
 * (Technometrics 25 (1983) 165; NIST/SEMATECH e-Handbook, 1.3.5.17.3). R[i] = max |x - mean| / s,
 * with the farthest value removed each time; lambda[i] = (n - i) t / sqrt((n - i - 1 + t2) (n - i +
 * 1)), t being the Student quantile at 1 - alpha / (2 (n - i + 1)) with n - i - 1 degrees of
 * freedom. The number of outliers is the largest i with R[i] > lambda[i], even where a smaller i
 * fails.
 *
 * @param statistics R, beginning with R[1]
 * @param critical lambda, beginning with lambda[1]
 * @param outliers the outliers' indices among the values, the farthest first
 */
public record GeneralizedEsd(
    List<Double> statistics, List<Double> critical, List<Integer> outliers) {

  /**
   * @param mostOutliers r, the most outliers to look for; three values are always left
   * @param alpha the level, between 0 and 1
   */
  public static GeneralizedEsd test(double[] values, int mostOutliers, double alpha) {
    int n = values.length;
    List<Integer> left = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      left.add(i);
    }
    List<Double> statistics = new ArrayList<>();
    List<Double> critical = new ArrayList<>();
    List<Integer> taken = new ArrayList<>();
    int found = 0;
    for (int i = 1; i <= Math.min(mostOutliers, n - 3); i++) {
      double[] rest = left.stream().mapToDouble(at -> values[at]).toArray();
      double mean = Mean.of(rest);
      int farthest =
          left.stream()
              .reduce((a, b) -> Math.abs(values[b] - mean) > Math.abs(values[a] - mean) ? b : a)
              .orElseThrow();
      statistics.add(Math.abs(values[farthest] - mean) / StandardDeviation.of(rest));
      double t = StudentT.twoSided(1 - alpha / (n - i + 1), n - i - 1.0);
      critical.add((n - i) * t / Math.sqrt((n - i - 1 + t * t) * (n - i + 1)));
      taken.add(farthest);
      left.remove((Integer) farthest);
      if (statistics.get(i - 1) > critical.get(i - 1)) {
        found = i;
      }
    }
    return new GeneralizedEsd(statistics, critical, List.copyOf(taken.subList(0, found)));
  }
}
