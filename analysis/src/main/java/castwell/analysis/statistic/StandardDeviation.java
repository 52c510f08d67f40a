package castwell.analysis.statistic;

import org.hipparchus.stat.StatUtils;

/**
 * The sample standard deviation, divided by n - 1, by the corrected two-pass formula, in the
 * values' unit; NaN of fewer than two values, which say nothing about spread.
 */
public final class StandardDeviation {
  private StandardDeviation() {}

  public static double of(double... values) {
    return values.length < 2 ? Double.NaN : Math.sqrt(StatUtils.variance(values));
  }
}
