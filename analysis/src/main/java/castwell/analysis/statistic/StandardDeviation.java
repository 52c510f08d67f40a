package castwell.analysis.statistic;

import org.hipparchus.stat.StatUtils;

/**
 * Sample standard deviation, divided by n - 1, by the corrected two-pass formula. In the values'
 * unit; NaN of fewer than two, which say nothing about spread.
 */
public final class StandardDeviation {
  private StandardDeviation() {}

  public static double of(double... values) {
    return values.length < 2 ? Double.NaN : Math.sqrt(StatUtils.variance(values));
  }
}
