package castwell.analysis.statistic;

import castwell.analysis.uncertainty.StudentT;

/**
 * The power of a two-sided t test: how often it finds an effect that is there, in the right
 * direction. It is exact, by the noncentral t distribution (R's power.t.test).
 */
public final class TPower {
  private static final double CLOSE = 1e-12;

  private TPower() {}

  /**
   * The power for an effect of a given size.
   *
   * @param noncentrality the effect over its standard error, at least 0; more than 10 000 is taken
   *     as 10 000, which is as good as certain to be found
   * @param alpha how often the test may find an effect that isn't there, between 0 and 1
   */
  public static double power(double noncentrality, double degreesOfFreedom, double alpha) {
    double critical = StudentT.twoSided(1 - alpha, degreesOfFreedom);
    double within = Math.min(noncentrality, NoncentralT.MOST_NONCENTRALITY);
    return 1 - NoncentralT.cumulative(critical, degreesOfFreedom, within);
  }

  /**
   * How many shots each of several cells needs, as the real number that gives just this power. The
   * effect's standard error is sd sqrt(cells / n), and its degrees of freedom are cells (n - 1). A
   * before and an after are two cells; with a control they are four.
   *
   * @param effect the effect to find, not 0, in the unit of {@code sd}
   * @param power the power to reach, between alpha and 1
   * @return at least 2; infinite when no number within 1e7 is enough
   */
  public static double shotsEach(int cells, double effect, double sd, double alpha, double power) {
    double low = 2;
    double high = 2;
    while (of(cells, high, effect, sd, alpha) < power) {
      low = high;
      high *= 2;
      if (high > 1e7) {
        return Double.POSITIVE_INFINITY;
      }
    }
    while (high - low > CLOSE * high) {
      double middle = (low + high) / 2;
      if (of(cells, middle, effect, sd, alpha) < power) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** The power that n shots in each of the cells give. */
  public static double of(int cells, double n, double effect, double sd, double alpha) {
    return power(Math.abs(effect) / (sd * Math.sqrt(cells / n)), cells * (n - 1), alpha);
  }
}
