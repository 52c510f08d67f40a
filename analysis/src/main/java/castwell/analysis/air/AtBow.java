package castwell.analysis.air;

import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;

/**
 * From a speed at the gates to the one at the bow: what the air took on the way is added again, v0
 * = v exp(k x). Of several shots it is their mean.
 *
 * @param share k x, near the share of its speed that the arrow lost; 0 where the distance or the
 *     arrow's diameter isn't known, and the speed stays the one at the gates
 */
public record AtBow(double share) {
  /** A speed that stays the one at the gates. */
  public static final AtBow NOT_KNOWN = new AtBow(0);

  private static final Quantity COEFFICIENT = Drag.unmeasuredCoefficient();
  private static final Source SOURCE = COEFFICIENT.contributions().keySet().iterator().next();

  /**
   * @param diameterM the shaft's diameter
   * @param massKg the arrow's mass
   * @param density the air's density, in kg/m3
   * @param distanceM from the bow to where the speed was measured
   */
  public static AtBow of(double diameterM, double massKg, double density, double distanceM) {
    return new AtBow(
        Drag.lossPerMetre(COEFFICIENT.value(), diameterM, massKg, density) * distanceM);
  }

  public boolean isKnown() {
    return share > 0;
  }

  /** What a speed at the gates is multiplied by. */
  public double factor() {
    return Math.exp(share);
  }

  /** What the coefficient's uncertainty makes of the speed at the bow, as a share of it. */
  public double relativeU() {
    return share * COEFFICIENT.standardUncertainty(Kind.COMMON) / COEFFICIENT.value();
  }

  /** The speed at the bow, of one at the gates. */
  public Quantity of(Quantity atGates) {
    return withCommon(atGates.times(factor()));
  }

  /** A speed at the bow with what the drag coefficient, common to all shots, adds. */
  public Quantity withCommon(Quantity atBow) {
    return isKnown() ? atBow.plus(common(relativeU() * atBow.value())) : atBow;
  }

  /**
   * A change that one standard uncertainty of the drag coefficient makes, as an uncertainty by it.
   */
  public static Quantity common(double change) {
    return Quantity.of(0, 1, SOURCE).times(change);
  }
}
