package castwell.analysis.statistic;

import org.hipparchus.stat.StatUtils;

/** Arithmetic mean, by the two-pass formula. In the values' unit; NaN of none. */
public final class Mean {
  private Mean() {}

  public static double of(double... values) {
    return StatUtils.mean(values);
  }
}
