package castwell.analysis.wood;

/**
 * How wood's stiffness changes with its moisture and temperature. At a given draw length, arrow
 * speed goes about as the square root of the stiffness (by reasoning, no source).
 */
public final class Stiffness {
  private static final double REFERENCE_PERCENT = 12;
  private static final double PERCENT_PER_FAHRENHEIT = -0.1108;

  private Stiffness() {}

  /**
   * A property at a moisture content, from its values at 12 % and in green wood (Wood Handbook,
   * FPL-GTR-190, eq. 5-3): P = P12 (P12 / Pg)^((12 - M) / (Mp - 12)), in the unit of P12.
   *
   * @param moisturePercent the moisture content, below {@code intersectionPercent}
   * @param intersectionPercent Mp, which is 24 for white ash and 25 for woods that aren't listed
   *     (from memory)
   */
  public static double atMoisture(
      double atTwelvePercent, double green, double moisturePercent, double intersectionPercent) {
    double exponent =
        (REFERENCE_PERCENT - moisturePercent) / (intersectionPercent - REFERENCE_PERCENT);
    return atTwelvePercent * Math.pow(atTwelvePercent / green, exponent);
  }

  /**
   * The relative change of the modulus of elasticity from a change of temperature at 12 % moisture,
   * near room temperature (FPL-GTR-190, table 5-16: 7.8553 - 0.1108 T percent, T in degrees
   * Fahrenheit).
   */
  public static double relativeChange(double celsiusWarmer) {
    return PERCENT_PER_FAHRENHEIT / 100 * celsiusWarmer * 1.8;
  }
}
