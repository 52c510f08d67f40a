package castwell.analysis.air;

/**
 * Density of moist air by the formula CIPM-2007 (A. Picard et al., Metrologia 45 (2008) 149), made
 * for 15 to 27 degrees C and 600 to 1100 hPa. For an arrow's drag it is good enough well beyond
 * these ranges.
 */
public final class Cipm2007 {
  /** Carbon dioxide in ordinary air, as a mole fraction. */
  public static final double ORDINARY_CO2 = 400e-6;

  private static final double GAS_CONSTANT = 8.314472;
  private static final double VAPOUR_KG_PER_MOL = 18.01528e-3;

  private Cipm2007() {}

  /**
   * The density of moist air, in kg/m3.
   *
   * @param celsius air temperature, in degrees C
   * @param pascal absolute pressure, in Pa
   * @param relativeHumidity 0 to 1
   * @param co2MoleFraction commonly {@link #ORDINARY_CO2}
   */
  public static double density(
      double celsius, double pascal, double relativeHumidity, double co2MoleFraction) {
    double vapour = vapourMoleFraction(celsius, pascal, relativeHumidity);
    double dryKgPerMol = 1e-3 * (28.96546 + 12.011 * (co2MoleFraction - 400e-6));
    double moistKgPerMol = dryKgPerMol * (1 - vapour * (1 - VAPOUR_KG_PER_MOL / dryKgPerMol));
    double z = compressibility(celsius, pascal, vapour);
    return pascal * moistKgPerMol / (z * GAS_CONSTANT * kelvin(celsius));
  }

  /** The mole fraction of water vapour in air, a pure number. */
  public static double vapourMoleFraction(double celsius, double pascal, double relativeHumidity) {
    return relativeHumidity
        * enhancementFactor(celsius, pascal)
        * saturationVapourPressure(celsius)
        / pascal;
  }

  /** The saturation vapour pressure p_sv over water, in Pa. */
  public static double saturationVapourPressure(double celsius) {
    double t = kelvin(celsius);
    return Math.exp(1.2378847e-5 * t * t - 1.9121316e-2 * t + 33.93711047 - 6.3431645e3 / t);
  }

  /** The enhancement factor f by which air raises the saturation vapour pressure, a pure number. */
  public static double enhancementFactor(double celsius, double pascal) {
    return 1.00062 + 3.14e-8 * pascal + 5.6e-7 * celsius * celsius;
  }

  /**
   * The compressibility factor Z, a pure number: it tells how far moist air departs from an ideal
   * gas.
   */
  public static double compressibility(double celsius, double pascal, double vapour) {
    double perKelvin = pascal / kelvin(celsius);
    double first =
        1.58123e-6
            + celsius * (-2.9331e-8 + celsius * 1.1043e-10)
            + vapour * (5.707e-6 - 2.051e-8 * celsius)
            + vapour * vapour * (1.9898e-4 - 2.376e-6 * celsius);
    double second = 1.83e-11 - 0.765e-8 * vapour * vapour;
    return 1 - perKelvin * first + perKelvin * perKelvin * second;
  }

  private static double kelvin(double celsius) {
    return celsius + 273.15;
  }
}
