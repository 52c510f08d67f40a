package castwell.analysis.season;

import castwell.analysis.bow.Reach;
import castwell.analysis.bow.Target;
import castwell.analysis.numeric.Contrast;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.TMixture;
import castwell.analysis.unit.Units;
import java.util.function.IntToDoubleFunction;

/**
 * What one bow state does on any day: its speed by mass on a typical one, with the interval that
 * days leave it. Logs are natural ones of speeds in m/s, so that 0.01 is 1 %.
 */
public final class StateCurve {
  /**
   * How far outside the arrows shot, as a share of their mass, a figure rests on the curve
   * (assumed).
   */
  public static final double BEYOND = 0.15;

  private final Season season;
  private final Layout layout;
  private final int state;

  StateCurve(Season season, Layout layout, int state) {
    this.season = season;
    this.layout = layout;
    this.state = state;
  }

  /** The log speed of an arrow of so many kg. */
  public TMixture logSpeed(double massKg) {
    return logSpeed(massKg, place -> 0);
  }

  /**
   * The log of the mean speed of some shots on another day.
   *
   * @param setUpU relative standard uncertainty of that day's set-up, if it is what its gates will
   *     read; else 0
   * @param shots how many; infinitely many for the speed without the shots' scatter
   */
  public TMixture nextDay(double massKg, double setUpU, double shots) {
    double alike = setUpU * setUpU + season.shotVariance(layout.stateBow[state]) / shots;
    VarianceGrid grid = season.grid();
    return logSpeed(
        massKg,
        place -> {
          double day = grid.day(place);
          double bowDay = grid.bowDay(place);
          return day * day + bowDay * bowDay + alike;
        });
  }

  /**
   * The log speed at so many grains per pound of draw weight.
   *
   * @param gpp above 0
   * @param drawWeightUN standard uncertainty of the draw weight, carried through the mass; 0 for
   *     the bow at that mass
   */
  public TMixture cast(double gpp, double drawWeightN, double drawWeightUN) {
    double massKg = castMassKg(gpp, drawWeightN);
    double scale = variance(massKg, drawWeightUN / drawWeightN);
    return logSpeed(massKg, place -> scale);
  }

  /**
   * The log of its cast less the log of another's, each at the mass of its own draw weight; the two
   * weights' errors have nothing in common.
   *
   * @param gpp above 0, the same for both
   * @param drawWeightUN standard uncertainty of the draw weight, as {@code otherUN} of the other's
   */
  public TMixture castLess(
      double gpp,
      double drawWeightN,
      double drawWeightUN,
      StateCurve other,
      double otherN,
      double otherUN) {
    double massKg = castMassKg(gpp, drawWeightN);
    double otherKg = castMassKg(gpp, otherN);
    double scales =
        variance(massKg, drawWeightUN / drawWeightN) + other.variance(otherKg, otherUN / otherN);
    return lessThan(massKg, other, otherKg, scales);
  }

  private static double castMassKg(double gpp, double drawWeightN) {
    return gpp * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP * drawWeightN;
  }

  /** What a relative uncertainty of the mass does to the log speed. */
  private double variance(double massKg, double relativeU) {
    double x = x(massKg);
    double u = e() * (1 + x) / (2 * Tangent.share(e(), x)) * relativeU;
    return u * u;
  }

  TMixture logSpeed(double massKg, IntToDoubleFunction more) {
    Contrast contrast = gradient(massKg);
    double offset = logSpeedAtCentre(massKg) - contrast.of(season.centre());
    return season.contrast(contrast, offset, more);
  }

  /** In m/s. */
  public Estimate speedMps(double massKg, double coverage) {
    return logSpeed(massKg).estimate(coverage).rising(Math::exp);
  }

  /** In J, m v^2 / 2. */
  public Estimate kineticEnergyJ(double massKg, double coverage) {
    return speedMps(massKg, coverage).rising(v -> massKg * v * v / 2);
  }

  /** In kg m/s, m v. */
  public Estimate momentumNs(double massKg, double coverage) {
    return speedMps(massKg, coverage).rising(v -> massKg * v);
  }

  /** Log speed with one mass less that of another state, or of this one, with another. */
  public TMixture lessThan(double massKg, StateCurve other, double otherKg) {
    return lessThan(massKg, other, otherKg, 0);
  }

  private TMixture lessThan(double massKg, StateCurve other, double otherKg, double more) {
    Contrast contrast = gradient(massKg).minus(other.gradient(otherKg));
    double difference = logSpeedAtCentre(massKg) - other.logSpeedAtCentre(otherKg);
    return season.contrast(contrast, difference - contrast.of(season.centre()), place -> more);
  }

  /** The least mass with which it reaches a target. */
  public Reach reach(Target target, double coverage) {
    return new LeastMass(this, target, coverage).reach();
  }

  /** E and K. */
  public StateEnergy energy() {
    return new StateEnergy(season, layout, state);
  }

  /**
   * Whether a mass is more than 15 % (assumed) outside the arrows that this state shot, so that
   * what is told of it rests on the curve.
   */
  public boolean isBeyondArrows(double massKg) {
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (int i = 0; i < layout.pairs(); i++) {
      if (layout.pairState[i] == state) {
        double mass = layout.arrows.meanKg * (1 + layout.x[i]);
        least = Math.min(least, mass);
        most = Math.max(most, mass);
      }
    }
    return massKg < least * (1 - BEYOND) || massKg > most * (1 + BEYOND);
  }

  private double x(double massKg) {
    return massKg / layout.arrows.meanKg - 1;
  }

  private double e() {
    return season.centre()[layout.stateCount() + state];
  }

  Contrast gradient(double massKg) {
    double x = x(massKg);
    return Contrast.of(
        new int[] {state, layout.stateCount() + state}, 1, -x / (2 * Tangent.share(e(), x)));
  }

  double logSpeedAtCentre(double massKg) {
    return season.centre()[state] - Math.log(Tangent.share(e(), x(massKg))) / 2;
  }
}
