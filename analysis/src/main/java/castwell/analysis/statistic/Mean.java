package castwell.analysis.statistic;

import org.hipparchus.stat.StatUtils;

/** The arithmetic mean by the two-pass formula, in the values' unit; NaN of none. */
public final class Mean {
  private Mean() {}

  public static double of(double... values) {
    return StatUtils.mean(values);
  }
}
