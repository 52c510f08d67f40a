package castwell.analysis.statistic;

import castwell.analysis.uncertainty.StudentT;

/**
 * The power of a two-sided t test: how often it finds what is there, and in the right direction.
 * Exact, by the noncentral t distribution (R's power.t.test).
 */
public final class TPower {
  private static final double CLOSE = 1e-12;

  private TPower() {}

  /**
   * @param noncentrality the effect over its standard error, at least 0; more than 10 000 is taken
   *     for 10 000, which is as good as certain to be found
   * @param alpha how often it may find what isn't there, between 0 and 1
   */
  public static double power(double noncentrality, double degreesOfFreedom, double alpha) {
    double critical = StudentT.twoSided(1 - alpha, degreesOfFreedom);
    double within = Math.min(noncentrality, NoncentralT.MOST_NONCENTRALITY);
    return 1 - NoncentralT.cumulative(critical, degreesOfFreedom, within);
  }

  /**
   * How many shots each of several cells needs, as the real number that gives just that power. The
   * effect's standard error is sd sqrt(cells / n), its degrees of freedom are cells (n - 1): two
   * cells for a before and an after, four with a control.
   *
   * @param effect not 0, in the unit of {@code sd}
   * @param power between alpha and 1
   * @return 2 at least; infinite when no number within 1e7 is enough
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
