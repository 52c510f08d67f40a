package castwell.analysis.bow;

import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.StudentT;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/**
 * The least arrow mass, in kg, with which a bow reaches a target, by {@link Target}'s formulas. Its
 * interval is found by inverse estimation, as for calibrations (Draper and Smith, Applied
 * Regression Analysis; from memory): it holds each mass at which the interval of what the bow gives
 * holds the target. So it needn't be symmetric, and may be open.
 *
 * @param massKg the least mass; empty where no arrow reaches the target
 * @param intervalKg every mass at which what the bow gives can't be told from the target; its upper
 *     end is infinite where even the heaviest arrow can't be shown to reach it, and so is its lower
 *     end where none may
 */
public record Reach(OptionalDouble massKg, Interval intervalKg) {
  /** A mass of about 3000 gr, heavier than any arrow: a target that takes more is out of reach. */
  private static final double HEAVIEST_KG = 0.2;

  private static final double LIGHTEST_KG = 1e-4;
  private static final double STEP = 1.25;
  private static final int HALVINGS = 44;

  public static Reach of(VirtualMass bow, Target target, double coverage) {
    double mass = target.leastMassKg(bow);
    // Student's quantile takes longer than all the rest, and hardly ever differs from mass to mass.
    Map<Double, Double> quantiles = new HashMap<>();
    DoubleUnaryOperator quantile =
        degrees -> quantiles.computeIfAbsent(degrees, d -> StudentT.twoSided(coverage, d));
    ToDoubleFunction<Double> least = m -> surplus(bow, target, m, quantile).low();
    ToDoubleFunction<Double> most = m -> surplus(bow, target, m, quantile).high();
    return new Reach(
        Double.isNaN(mass) ? OptionalDouble.empty() : OptionalDouble.of(mass),
        new Interval(crossing(most), crossing(least)));
  }

  private static Interval surplus(
      VirtualMass bow, Target target, double massKg, DoubleUnaryOperator quantile) {
    Quantity surplus = target.given(bow, massKg).minus(target.wanted());
    double half =
        quantile.applyAsDouble(surplus.effectiveDegreesOfFreedom()) * surplus.standardUncertainty();
    return new Interval(surplus.value() - half, surplus.value() + half);
  }

  /**
   * The mass at which the surplus rises to 0; 0 where it starts there, infinite where it never
   * does.
   */
  private static double crossing(ToDoubleFunction<Double> surplus) {
    double low = LIGHTEST_KG;
    double high = HEAVIEST_KG;
    if (surplus.applyAsDouble(low) >= 0) {
      return 0;
    }
    // Beyond the arrows shot the interval widens with mass, so the first crossing is the one
    // wanted.
    double m = low;
    while (m < high && !(surplus.applyAsDouble(m) >= 0)) {
      low = m;
      m *= STEP;
    }
    if (m >= high) {
      return Double.POSITIVE_INFINITY;
    }
    high = m;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = Math.sqrt(low * high);
      if (surplus.applyAsDouble(middle) >= 0) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }
}
