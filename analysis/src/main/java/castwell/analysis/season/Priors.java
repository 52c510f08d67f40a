package castwell.analysis.season;

/**
 * What is assumed before any arrow is shot. All of it is assumed, from what is commonly told of
 * bows, and gives way to the season's own shots.
 *
 * @param day how much days differ for all bows alike, D
 * @param bowDay how much a bow differs from day to day by itself, W
 * @param arrow how much an arrow differs on a bow from what its mass says, A
 * @param shotSd typical standard deviation of a bow's shots, as a share of the speed
 * @param shotDegrees how many degrees of freedom that counts for (scaled inverse chi-square; Gelman
 *     et al., Bayesian Data Analysis; from memory)
 * @param eMean mean of e = m / (m + K) at the mean mass of the arrows
 * @param eSd its standard deviation
 */
public record Priors(
    LogNormal day,
    LogNormal bowDay,
    LogNormal arrow,
    double shotSd,
    double shotDegrees,
    double eMean,
    double eSd) {

  /**
   * A standard deviation whose log is normal.
   *
   * @param median its median, as a share of the speed
   * @param logSd the standard deviation of its log
   */
  public record LogNormal(double median, double logSd) {
    /** The log density of a log standard deviation, but for a constant. */
    double logDensity(double log) {
      double z = (log - Math.log(median)) / logSd;
      return -z * z / 2;
    }
  }

  /**
   * Median and 95 % limits: D 0.6 % (0.19 to 1.9), W 0.35 % (0.11 to 1.1), A 0.22 % (0.08 to 0.6);
   * the shots' 0.7 % (0.4 to 2.6).
   */
  public static final Priors ASSUMED =
      new Priors(
          new LogNormal(0.006, 0.6),
          new LogNormal(0.0035, 0.6),
          new LogNormal(0.0022, 0.5),
          0.007,
          3,
          0.8,
          0.15);

  /** The standard deviation of a bow's log speed from day to day, by the medians. */
  public double otherDay() {
    return Math.hypot(day.median(), bowDay.median());
  }

  /** The medians' logs: of D, W, A. */
  double[] centre() {
    return new double[] {
      Math.log(day.median()), Math.log(bowDay.median()), Math.log(arrow.median())
    };
  }

  /** The log density of the logs of D, W, A, but for a constant. */
  double logDensity(double[] theta) {
    return day.logDensity(theta[0]) + bowDay.logDensity(theta[1]) + arrow.logDensity(theta[2]);
  }
}
