package castwell.analysis.outlier;

/**
 * What is assumed of strays among the natural logs of speeds, before a bow's shots are seen: 3 % of
 * shots are strays, four of five of them too slow, as an arrow that was plucked is, by up to 15 %.
 * A bow's good shots scatter by 0.45 to 1.5 % (95 %). All of that is assumed; the six degrees of
 * freedom were chosen by simulations, told in season.md.
 */
final class StrayPrior {
  private static final double SHARE = 0.03;
  private static final double LOG_STRAY = Math.log(SHARE);
  private static final double LOG_GOOD = Math.log1p(-SHARE);
  private static final double SLOW = 0.8;
  private static final double FARTHEST = 0.15;
  private static final double BEYOND = 0.001;
  private static final double LOG_SLOW = Math.log(SLOW / FARTHEST);
  private static final double LOG_FAST = Math.log((1 - SLOW) / FARTHEST);
  private static final double LOG_BEYOND = Math.log(BEYOND);
  private static final double LOG_CIRCLE = Math.log(2 * Math.PI);
  private static final double TYPICAL_SD = 0.007;
  private static final double TYPICAL_DEGREES = 6;
  private static final double LEAST_SD = 0.0015;
  private static final double MOST_SD = 0.03;

  static final int SDS = 21;

  private StrayPrior() {}

  /** The log probability that these shots are good and those are strays. */
  static double logShares(int good, int strays) {
    return good * LOG_GOOD + strays * LOG_STRAY;
  }

  /** The log density of how far a stray lies from the mean of the good ones. */
  static double logDistance(double distance) {
    if (Math.abs(distance) > FARTHEST) {
      return LOG_BEYOND;
    }
    return distance < 0 ? LOG_SLOW : LOG_FAST;
  }

  /** Standard deviations that a bow's shots may have, in equal steps of their log. */
  private static final double[] SD = new double[SDS];

  private static final double[] LOG_SD = new double[SDS];

  static {
    for (int s = 0; s < SDS; s++) {
      SD[s] = LEAST_SD * Math.pow(MOST_SD / LEAST_SD, s / (SDS - 1.0));
      LOG_SD[s] = Math.log(SD[s]);
    }
  }

  /**
   * The log density of that standard deviation's log, but for a constant: scaled inverse
   * chi-square.
   *
   * @param least what is smaller can't be
   */
  static double logDensity(int step, double least) {
    if (SD[step] < least && step < SDS - 1) {
      return Double.NEGATIVE_INFINITY;
    }
    return -TYPICAL_DEGREES * LOG_SD[step]
        - halfSquares(TYPICAL_DEGREES * TYPICAL_SD * TYPICAL_SD, step);
  }

  /**
   * The log likelihood of so many independent residuals with such a sum of squares, at that one.
   */
  static double logLikelihood(int residuals, double squares, int step) {
    return -residuals * (LOG_SD[step] + LOG_CIRCLE / 2) - halfSquares(squares, step);
  }

  /** The log of what integrating over the mean of so many good ones gives, at its most likely. */
  static double logIntegral(double good, int step) {
    return LOG_CIRCLE / 2 + LOG_SD[step] - Math.log(good) / 2;
  }

  /**
   * The log odds of a shot to be a stray, so far from a mean that is known but for its variance.
   *
   * @param variance of that mean, as a share of that of a shot
   */
  static double logOdds(double distance, double variance, int step) {
    return LOG_STRAY
        + logDistance(distance)
        - LOG_GOOD
        + LOG_CIRCLE / 2
        + LOG_SD[step]
        + Math.log1p(variance) / 2
        + halfSquares(distance * distance, step) / (1 + variance);
  }

  private static double halfSquares(double squares, int step) {
    return squares / (2 * SD[step] * SD[step]);
  }
}
