package castwell.analysis.statistic;

import java.util.Arrays;

/** The middle value, or the mean of the middle two. In the values' unit; NaN of none. */
public final class Median {
  private Median() {}

  public static double of(double... values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}
