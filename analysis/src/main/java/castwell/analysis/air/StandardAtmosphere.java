package castwell.analysis.air;

/**
 * The standard atmosphere (ISO 2533:1975) up to 11 km: the air to assume where nobody measured it.
 * Heights are geopotential, in metres above mean sea level.
 */
public final class StandardAtmosphere {
  private static final double SEA_LEVEL_KELVIN = 288.15;
  private static final double SEA_LEVEL_PASCAL = 101325;
  private static final double KELVIN_PER_METRE = -0.0065;
  private static final double GAS_CONSTANT = 287.05287;
  private static final double GRAVITY = 9.80665;
  private static final double LOWEST_M = -2000;
  private static final double HIGHEST_M = 11000;

  private StandardAtmosphere() {}

  /**
   * @throws IllegalArgumentException for a height outside -2000 to 11000 m; so do pressure and
   *     density
   */
  public static double temperatureK(double heightM) {
    if (!(heightM >= LOWEST_M && heightM <= HIGHEST_M)) {
      throw new IllegalArgumentException(
          "a height above sea level lies between -2000 and 11000 m, not at " + heightM);
    }
    return SEA_LEVEL_KELVIN + KELVIN_PER_METRE * heightM;
  }

  public static double pressurePa(double heightM) {
    double ratio = temperatureK(heightM) / SEA_LEVEL_KELVIN;
    return SEA_LEVEL_PASCAL * Math.pow(ratio, -GRAVITY / (GAS_CONSTANT * KELVIN_PER_METRE));
  }

  /** The air's density, in kg/m3. */
  public static double density(double heightM) {
    return pressurePa(heightM) / (GAS_CONSTANT * temperatureK(heightM));
  }
}
