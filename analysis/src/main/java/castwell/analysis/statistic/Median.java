package castwell.analysis.statistic;

import java.util.Arrays;

/**
 * The middle value, or the mean of the middle two, in the values' unit; NaN of none, or where any
 * value is NaN.
 */
public final class Median {
  private Median() {}

  public static double of(double... values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    if (Double.isNaN(sorted[sorted.length - 1])) {
      return Double.NaN; // sorting puts NaN after all numbers
    }
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}
