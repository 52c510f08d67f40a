package castwell.analysis.season;

import castwell.analysis.bow.Reach;
import castwell.analysis.bow.Target;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.TMixture;
import castwell.analysis.unit.Units;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;

/**
 * The least mass with which a bow state reaches a target, and the interval of it: where the ends of
 * what the bow gives reach it (inverse estimation). Masses of 100 to 3000 gr are looked at: 0
 * stands for less than all of them, infinity for more.
 */
final class LeastMass {
  private static final double LIGHTEST_KG = 100 * Units.KILOGRAMS_PER_GRAIN;
  private static final double HEAVIEST_KG = 3000 * Units.KILOGRAMS_PER_GRAIN;
  private static final double STEP = 1.25;
  private static final int HALVINGS = 40;

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
    double mass = first(m -> curve.logSpeedAtCentre(m) >= wanted(m));
    double low = first(m -> speed(m).below(wanted(m)) <= 1 - tail);
    double high = first(m -> speed(m).below(wanted(m)) <= tail);
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

  private static double first(DoublePredicate isReached) {
    if (isReached.test(LIGHTEST_KG)) {
      return 0;
    }
    double low = LIGHTEST_KG;
    double high = Math.min(HEAVIEST_KG, low * STEP);
    while (!isReached.test(high)) {
      if (high >= HEAVIEST_KG) {
        return Double.POSITIVE_INFINITY;
      }
      low = high;
      high = Math.min(HEAVIEST_KG, high * STEP);
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = Math.sqrt(low * high);
      if (isReached.test(middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }
}
