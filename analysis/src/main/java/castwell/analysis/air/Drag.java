package castwell.analysis.air;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;

/**
 * What the air takes from an arrow's speed: v(x) = v0 exp(-k x) with k = rho C_D A / (2 m), where A
 * is the shaft's cross-section.
 */
public final class Drag {
  /** The drag coefficient with a laminar boundary layer (KAKENHI 18K03943, report of 2020). */
  public static final double LAMINAR = 1.3;

  /** The drag coefficient at a Reynolds number of 12000 (Proceedings (MDPI) 49 (2020) 56). */
  public static final double SHORT_VANES = 1.56;

  /** The drag coefficient at a Reynolds number of 12000 (Proceedings (MDPI) 49 (2020) 56). */
  public static final double LARGE_VANES = 2.05;

  /** The drag coefficient with a turbulent boundary layer (KAKENHI 18K03943, report of 2020). */
  public static final double TURBULENT = 2.6;

  private Drag() {}

  /**
   * The coefficient of an arrow that nobody measured: large vanes, anywhere from laminar to
   * turbulent. The bounds are not symmetric, so u^2 = (b+ + b-)^2 / 12 (JCGM 100:2008, 4.3.8).
   */
  public static Quantity unmeasuredCoefficient() {
    return Quantity.of(
        LARGE_VANES, (TURBULENT - LAMINAR) / Math.sqrt(12), Source.common("drag coefficient"));
  }

  /**
   * k, the share of its speed that an arrow loses, per metre.
   *
   * @param diameterM the shaft's diameter
   * @param massKg the arrow's mass
   * @param density the air's density, in kg/m3
   */
  public static double lossPerMetre(
      double dragCoefficient, double diameterM, double massKg, double density) {
    double crossSection = Math.PI / 4 * diameterM * diameterM;
    return density * dragCoefficient * crossSection / (2 * massKg);
  }

  /** The same for an uncertain coefficient; diameter, mass and density are taken as exact. */
  public static Quantity lossPerMetre(
      Quantity dragCoefficient, double diameterM, double massKg, double density) {
    return dragCoefficient.times(lossPerMetre(1, diameterM, massKg, density));
  }

  /**
   * The speed with which the arrow left the bow: v exp(k x).
   *
   * @param speed the speed measured in the middle between the gates, in m/s
   * @param distanceM the distance from the bow to that middle
   * @param lossPerMetre k, as above
   */
  public static Quantity speedAtBow(Quantity speed, double distanceM, Quantity lossPerMetre) {
    double growth = Math.exp(lossPerMetre.value() * distanceM);
    return speed.times(lossPerMetre.mapped(growth, distanceM * growth));
  }
}
