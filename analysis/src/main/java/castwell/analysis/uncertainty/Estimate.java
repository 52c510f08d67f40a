package castwell.analysis.uncertainty;

import java.util.function.DoubleUnaryOperator;

/** A value with the interval that belongs to it, in the same unit. */
public record Estimate(double value, Interval interval) {

  /** A rising function of it, ends and all. */
  public Estimate rising(DoubleUnaryOperator f) {
    return new Estimate(
        f.applyAsDouble(value),
        new Interval(f.applyAsDouble(interval.low()), f.applyAsDouble(interval.high())));
  }

  /** A falling function of it: what was the upper end gives the lower one. */
  public Estimate falling(DoubleUnaryOperator f) {
    return new Estimate(
        f.applyAsDouble(value),
        new Interval(f.applyAsDouble(interval.high()), f.applyAsDouble(interval.low())));
  }
}
