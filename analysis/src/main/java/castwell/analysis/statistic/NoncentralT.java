package castwell.analysis.statistic;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * The noncentral t distribution, that of (Z + delta) / S with S = sqrt(chi2 / nu). P(T &lt;= t) is
 * the mean of Phi(t S - delta) over S (Johnson, Kotz and Balakrishnan, Continuous Univariate
 * Distributions 2 (1995), ch. 31, from memory), taken by the trapezoidal rule over w = ln S, whose
 * density goes as exp(nu (w - exp(2 w) / 2)). All terms are positive, so both tails keep their
 * digits.
 */
public final class NoncentralT {
  public static final double FEWEST_DEGREES = 0.1;
  public static final double MOST_NONCENTRALITY = 1e4;

  /** A weight, relative to the largest, that no longer counts; tails are good down to about it. */
  private static final double NEGLIGIBLE = 1e-50;

  private static final NormalDistribution NORMAL = new NormalDistribution();

  private NoncentralT() {}

  /**
   * The probability of a value of at most t; NaN of NaN.
   *
   * @param degreesOfFreedom the degrees of freedom, at least 0.1; they may be fractional or
   *     infinite
   * @param noncentrality delta, within 10 000 to either side of 0
   * @throws IllegalArgumentException for degrees of freedom or a noncentrality out of these ranges
   */
  public static double cumulative(double t, double degreesOfFreedom, double noncentrality) {
    if (!(degreesOfFreedom >= FEWEST_DEGREES)) {
      throw new IllegalArgumentException(
          "degrees of freedom are %s at least, not %s".formatted(FEWEST_DEGREES, degreesOfFreedom));
    }
    if (!(Math.abs(noncentrality) <= MOST_NONCENTRALITY)) {
      throw new IllegalArgumentException(
          "a noncentrality lies within %s to either side, not at %s"
              .formatted(MOST_NONCENTRALITY, noncentrality));
    }
    if (Double.isInfinite(degreesOfFreedom)) {
      return NORMAL.cumulativeProbability(t - noncentrality);
    }
    double step = step(degreesOfFreedom, noncentrality);
    double weights = 0;
    double weighted = 0;
    for (int direction = -1; direction <= 1; direction += 2) {
      // The largest weight, at w = 0, belongs to one direction only.
      for (int i = direction < 0 ? 1 : 0; ; i++) {
        double w = direction * i * step;
        double weight = Math.exp(degreesOfFreedom * (w - Math.expm1(2 * w) / 2));
        if (weight < NEGLIGIBLE) {
          break;
        }
        weights += weight;
        weighted += weight * NORMAL.cumulativeProbability(t * Math.exp(w) - noncentrality);
      }
    }
    return weighted / weights;
  }

  /**
   * A step in w that is small against the density's width and against the width over which Phi
   * rises.
   */
  private static double step(double degreesOfFreedom, double noncentrality) {
    double width = Math.min(0.25, 1 / Math.sqrt(2 * degreesOfFreedom));
    return Math.min(width, 1 / (1 + Math.abs(noncentrality))) / 2;
  }
}
