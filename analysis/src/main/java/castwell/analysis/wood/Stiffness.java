package castwell.analysis.wood;

/**
 * How wood's stiffness changes with its moisture and temperature. With the draw length given, arrow
 * speed goes about as its square root (by reasoning, no source).
 */
public final class Stiffness {
  private static final double REFERENCE_PERCENT = 12;
  private static final double PERCENT_PER_FAHRENHEIT = -0.1108;

  private Stiffness() {}

  /**
   * A property at a moisture content, from those at 12 % and of green wood (Wood Handbook,
   * FPL-GTR-190, eq. 5-3): P = P12 (P12 / Pg)^((12 - M) / (Mp - 12)). In the unit of P12.
   *
   * @param moisturePercent below {@code intersectionPercent}
   * @param intersectionPercent Mp: 24 of white ash, 25 of woods that aren't listed (from memory)
   */
  public static double atMoisture(
      double atTwelvePercent, double green, double moisturePercent, double intersectionPercent) {
    double exponent =
        (REFERENCE_PERCENT - moisturePercent) / (intersectionPercent - REFERENCE_PERCENT);
    return atTwelvePercent * Math.pow(atTwelvePercent / green, exponent);
  }

  /**
   * Relative change of the modulus of elasticity from a change of temperature at 12 % moisture,
   * near room temperature (FPL-GTR-190, table 5-16: 7.8553 - 0.1108 T percent, T in degrees
   * Fahrenheit).
   */
  public static double relativeChange(double celsiusWarmer) {
    return PERCENT_PER_FAHRENHEIT / 100 * celsiusWarmer * 1.8;
  }
}
