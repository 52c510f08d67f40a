package castwell.analysis.season;

import castwell.analysis.bow.Reach;
import castwell.analysis.bow.Target;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.TMixture;
import castwell.analysis.unit.Units;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * The least mass with which a bow state reaches a target, and the interval of it: where the ends of
 * what the bow gives reach it (inverse estimation). Masses of 100 to 3000 gr are looked at: 0
 * stands for less than all of them, infinity for more.
 */
final class LeastMass {
  private static final double LIGHTEST_KG = 100 * Units.KILOGRAMS_PER_GRAIN;
  private static final double HEAVIEST_KG = 3000 * Units.KILOGRAMS_PER_GRAIN;
  private static final double STEP = 1.25;
  private static final int MOST_STEPS = 100;
  private static final double ACCURACY = 1e-12;
  private static final double CLOSE = 1e-11;

  private final StateCurve curve;
  private final double tail;
  private final double logWanted;
  private final double variance;

  /** A target is m v^power over a divisor. */
  private final double power;

  private final double divisor;

  LeastMass(StateCurve curve, Target target, double coverage) {
    this.curve = curve;
    tail = (1 - coverage) / 2;
    power = target instanceof Target.KineticEnergy ? 2 : 1;
    divisor = power;
    Quantity wanted = target.wanted();
    logWanted = Math.log(wanted.value());
    double u = wanted.standardUncertainty() / wanted.value() / power;
    variance = u * u;
  }

  Reach reach() {
    double mass = first(m -> curve.logSpeedAtCentre(m) - wanted(m));
    double low = first(m -> 1 - tail - speed(m).below(wanted(m)));
    double high = first(m -> tail - speed(m).below(wanted(m)));
    return new Reach(
        Double.isInfinite(mass) ? OptionalDouble.empty() : OptionalDouble.of(mass),
        new Interval(low, high));
  }

  /** The log speed that an arrow of that mass needs. */
  private double wanted(double massKg) {
    return (logWanted - Math.log(massKg / divisor)) / power;
  }

  private TMixture speed(double massKg) {
    return curve.logSpeed(massKg, place -> variance);
  }

  /** Where a surplus first isn't below 0. */
  private static double first(DoubleUnaryOperator surplus) {
    double low = LIGHTEST_KG;
    double below = surplus.applyAsDouble(low);
    if (below >= 0) {
      return 0;
    }
    while (low < HEAVIEST_KG) {
      double high = Math.min(HEAVIEST_KG, low * STEP);
      double above = surplus.applyAsDouble(high);
      if (above >= 0) {
        return between(surplus, low, below, high, above);
      }
      low = high;
      below = above;
    }
    return Double.POSITIVE_INFINITY;
  }

  /**
   * By secants that keep it between them (the Illinois rule), or by halves where they don't come
   * closer.
   */
  private static double between(
      DoubleUnaryOperator surplus, double from, double below, double to, double above) {
    double low = from;
    double high = to;
    double atLow = below;
    double atHigh = above;
    for (int i = 0; i < MOST_STEPS && high - low > ACCURACY * high; i++) {
      double x = i % 3 == 2 ? (low + high) / 2 : high - atHigh * (high - low) / (atHigh - atLow);
      double y = surplus.applyAsDouble(x);
      if (y >= 0) {
        high = x;
        atHigh = y;
        atLow /= 2;
      } else {
        low = x;
        atLow = y;
        atHigh /= 2;
      }
      if (Math.abs(y) < CLOSE) {
        return x;
      }
    }
    return high;
  }
}
