package castwell.analysis.statistic;

import java.util.Arrays;

/**
 * The median of the distances from the median, unscaled, in the values' unit; NaN of none, 0 where
 * more than half the values are equal.
 */
public final class MedianAbsoluteDeviation {
  private MedianAbsoluteDeviation() {}

  public static double of(double... values) {
    double median = Median.of(values);
    return Median.of(Arrays.stream(values).map(value -> Math.abs(value - median)).toArray());
  }
}
