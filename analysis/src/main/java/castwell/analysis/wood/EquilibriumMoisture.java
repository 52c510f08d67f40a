package castwell.analysis.wood;

/**
 * The moisture content that wood comes to in air of a temperature and humidity, by Hailwood and
 * Horrobin's two-hydrate equation with the Wood Handbook's coefficients (Forest Products
 * Laboratory, Wood Handbook, FPL-GTR-190, eq. 4-5): M = 1800 / W (K h / (1 - K h) + (K1 K h + 2 K1
 * K2 K2h2) / (1 + K1 K h + K1 K2 K2h2)).
 */
public final class EquilibriumMoisture {
  private EquilibriumMoisture() {}

  /**
   * The moisture content in percent of the dry mass.
   *
   * @param celsius the air's temperature, about -1 to 55, which is the table's range
   * @param relativeHumidity the air's relative humidity, 0 to 0.95
   */
  public static double percent(double celsius, double relativeHumidity) {
    double t = celsius;
    double w = 349 + 1.29 * t + 0.0135 * t * t;
    double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    double kh = k * relativeHumidity;
    double dissolved = kh / (1 - kh);
    double hydrates = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
    return 1800 / w * (dissolved + hydrates);
  }
}
