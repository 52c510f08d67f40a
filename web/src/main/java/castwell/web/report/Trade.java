package castwell.web.report;

import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.view.Interval95;
import java.util.OptionalDouble;

/** SI quantities as a report's values: in a trade unit, empty where there is no finite figure. */
public final class Trade {
  public static final double COVERAGE = 0.95;

  private Trade() {}

  public static OptionalDouble in(double unit, double si) {
    return finite(si / unit);
  }

  public static OptionalDouble value(double unit, Quantity quantity) {
    return finite(quantity.value() / unit);
  }

  public static OptionalDouble u(double unit, Quantity quantity) {
    return finite(quantity.standardUncertainty() / unit);
  }

  /** The 95 % interval. */
  public static Interval95 ci95(double unit, Quantity quantity) {
    return interval(unit, quantity.interval(COVERAGE));
  }

  public static OptionalDouble value(double unit, Estimate estimate) {
    return finite(estimate.value() / unit);
  }

  public static Interval95 ci95(double unit, Estimate estimate) {
    return interval(unit, estimate.interval());
  }

  public static Interval95 interval(double unit, Interval interval) {
    return new Interval95(finite(interval.low() / unit), finite(interval.high() / unit));
  }

  public static OptionalDouble finite(double value) {
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
