package castwell.analysis.outlier;

import java.util.Arrays;
import java.util.Map;

/**
 * Dixon's Q test (r10) for one outlier in 3 to 10 values: the gap to its neighbour over the range.
 * Two-sided critical values: Rorabacher, Anal. Chem. 63 (1991) 139.
 *
 * @param q the ratio for the end that stands farther off; NaN where all values are equal
 * @param critical the ratio above which that end is an outlier
 */
public record DixonQ(double q, double critical) {
  private static final Map<Integer, double[]> TABLE =
      Map.of(
          90, new double[] {.941, .765, .642, .560, .507, .468, .437, .412},
          95, new double[] {.970, .829, .710, .625, .568, .526, .493, .466},
          99, new double[] {.994, .926, .821, .740, .680, .634, .598, .568});

  /**
   * @param confidencePercent 90, 95 or 99
   * @throws IllegalArgumentException for a number of values or a confidence that isn't in the table
   */
  public static DixonQ test(double[] values, int confidencePercent) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    double critical = critical(n, confidencePercent);
    double gap = Math.max(sorted[1] - sorted[0], sorted[n - 1] - sorted[n - 2]);
    return new DixonQ(gap / (sorted[n - 1] - sorted[0]), critical);
  }

  public static double critical(int n, int confidencePercent) {
    double[] column = TABLE.get(confidencePercent);
    if (column == null || n < 3 || n > column.length + 2) {
      throw new IllegalArgumentException(
          "Dixon's table has 3 to 10 values at 90, 95 and 99 %%, not %d at %d %%"
              .formatted(n, confidencePercent));
    }
    return column[n - 3];
  }

  public boolean isOutlier() {
    return q > critical;
  }
}
