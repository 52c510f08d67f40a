package castwell.analysis.statistic;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.special.Beta;
import org.hipparchus.special.Gamma;

/**
 * The noncentral t distribution: of (Z + delta) / sqrt(chi2 / nu). By Lenth's series in incomplete
 * beta functions (Algorithm AS 243, Appl. Statist. 38 (1989) 185), summed outwards from its largest
 * term so that no noncentrality is too large for it.
 */
public final class NoncentralT {
  private static final double NEGLIGIBLE = 1e-17;
  private static final NormalDistribution NORMAL = new NormalDistribution();

  private NoncentralT() {}

  /**
   * The probability of a value of at most t.
   *
   * @param degreesOfFreedom above 0, fractional ones as well
   */
  public static double cumulative(double t, double degreesOfFreedom, double noncentrality) {
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException("degrees of freedom are above 0, not " + degreesOfFreedom);
    }
    double p =
        t < 0
            ? 1 - fromZero(-t, degreesOfFreedom, -noncentrality)
            : fromZero(t, degreesOfFreedom, noncentrality);
    return Math.min(1, Math.max(0, p));
  }

  private static double fromZero(double t, double nu, double delta) {
    double below = NORMAL.cumulativeProbability(-delta);
    if (t == 0) {
      return below;
    }
    double x = t * t / (t * t + nu);
    double half = delta * delta / 2;
    int largest = (int) half;
    double sum = 0;
    for (int j = largest; ; j++) {
      double term = term(j, x, nu, delta, half);
      sum += term;
      if (Math.abs(term) < NEGLIGIBLE || j > largest + 10_000) {
        break;
      }
    }
    for (int j = largest - 1; j >= 0; j--) {
      double term = term(j, x, nu, delta, half);
      sum += term;
      if (Math.abs(term) < NEGLIGIBLE) {
        break;
      }
    }
    return below + sum / 2;
  }

  private static double term(int j, double x, double nu, double delta, double half) {
    double logHalf = half == 0 ? (j == 0 ? 0 : Double.NEGATIVE_INFINITY) : j * Math.log(half);
    double p = Math.exp(-half + logHalf - Gamma.logGamma(j + 1));
    double q = delta / Math.sqrt(2) * Math.exp(-half + logHalf - Gamma.logGamma(j + 1.5));
    return p * Beta.regularizedBeta(x, j + 0.5, nu / 2)
        + q * Beta.regularizedBeta(x, j + 1, nu / 2);
  }
}
