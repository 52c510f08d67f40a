package castwell.analysis.gates;

/**
 * The acceleration of free fall, in m/s2, by latitude and height: Somigliana's closed formula with
 * the constants of GRS 80 and the second-order free-air correction (Moritz, Geodetic Reference
 * System 1980, J. Geod. 74 (2000) 128). What the ground below adds or takes stays within 0.001 m/s2
 * nearly everywhere, one part in ten thousand.
 */
public final class NormalGravity {
  private static final double EQUATOR = 9.7803267715;
  private static final double K = 0.001931851353;
  private static final double E2 = 0.00669438002290;
  private static final double FREE_AIR = 0.0030877e-3;
  private static final double FREE_AIR_LATITUDE = 0.0000043e-3;
  private static final double FREE_AIR_SQUARE = 0.00000072e-6;

  private NormalGravity() {}

  /**
   * @param latitudeDegrees -90 to 90
   * @param heightM height above the sea
   * @throws IllegalArgumentException for a latitude beyond a pole
   */
  public static double of(double latitudeDegrees, double heightM) {
    if (!(Math.abs(latitudeDegrees) <= 90)) {
      throw new IllegalArgumentException(
          "a latitude lies between -90 and 90 degrees, not at " + latitudeDegrees);
    }
    double sine = Math.sin(Math.toRadians(latitudeDegrees));
    double sine2 = sine * sine;
    double atSea = EQUATOR * (1 + K * sine2) / Math.sqrt(1 - E2 * sine2);
    return atSea
        - (FREE_AIR - FREE_AIR_LATITUDE * sine2) * heightM
        + FREE_AIR_SQUARE * heightM * heightM;
  }
}
