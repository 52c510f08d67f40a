package castwell.web.report;

import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Quantity;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/** SI quantities as a report's values: in a trade unit, null where there is no finite figure. */
public final class Trade {
  /** An interval of which nothing is known. */
  static final List<Double> NOT_KNOWN = Collections.unmodifiableList(Arrays.asList(null, null));

  public static final double COVERAGE = 0.95;

  private Trade() {}

  public static Double in(double unit, double si) {
    return finite(si / unit);
  }

  public static Double value(double unit, Quantity quantity) {
    return finite(quantity.value() / unit);
  }

  public static Double u(double unit, Quantity quantity) {
    return finite(quantity.standardUncertainty() / unit);
  }

  /** The 95 % interval. */
  public static List<Double> ci95(double unit, Quantity quantity) {
    return interval(unit, quantity.interval(COVERAGE));
  }

  public static List<Double> interval(double unit, Interval interval) {
    return Collections.unmodifiableList(
        Arrays.asList(finite(interval.low() / unit), finite(interval.high() / unit)));
  }

  public static Double finite(double value) {
    return Double.isFinite(value) ? (Double) value : null;
  }
}
