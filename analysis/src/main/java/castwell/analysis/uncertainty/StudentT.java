package castwell.analysis.uncertainty;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Student's t distribution with any degrees of freedom above 0, including fractional and infinitely
 * many ones (the normal distribution).
 */
public final class StudentT {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /**
   * The relative size of a last step, which leaves quantiles good to the last few digits of a
   * double.
   */
  private static final double ACCURACY = 1e-13;

  private static final int MOST_STEPS = 60;

  private static final double MANY = 1000;

  private StudentT() {}

  /**
   * The number of standard uncertainties to either side that covers the true value with the given
   * probability.
   *
   * @param coverage the probability, between 0 and 1
   * @throws IllegalArgumentException for any other coverage
   */
  public static double twoSided(double coverage, double degreesOfFreedom) {
    if (!(coverage > 0 && coverage < 1)) {
      throw new IllegalArgumentException("coverage lies between 0 and 1, not " + coverage);
    }
    double probability = 0.5 + coverage / 2;
    double normal = NORMAL.inverseCumulativeProbability(probability);
    if (Double.isInfinite(degreesOfFreedom)) {
      return normal;
    }
    return degreesOfFreedom >= MANY
        ? expansion(normal, degreesOfFreedom)
        : newton(new TDistribution(degreesOfFreedom), probability, normal);
  }

  /**
   * The quantile in powers of 1/n (Abramowitz and Stegun, Handbook of Mathematical Functions,
   * 26.7.5): from a thousand degrees of freedom on, what it leaves out is beyond a double's digits.
   */
  private static double expansion(double z, double n) {
    double z2 = z * z;
    double first = (z2 + 1) / 4;
    double second = ((5 * z2 + 16) * z2 + 3) / 96;
    double third = (((3 * z2 + 19) * z2 + 17) * z2 - 15) / 384;
    double fourth = ((((79 * z2 + 776) * z2 + 1482) * z2 - 1920) * z2 - 945) / 92160;
    return z * (1 + (first + (second + (third + fourth / n) / n) / n) / n);
  }

  /**
   * The quantile by Newton's method, which is ten times faster than bracketing. It starts at the
   * normal quantile, which lies below; there the distribution function is concave, so that the
   * steps come up to the quantile and never pass it.
   */
  private static double newton(TDistribution t, double probability, double start) {
    double x = start;
    for (int i = 0; i < MOST_STEPS; i++) {
      double step = (probability - t.cumulativeProbability(x)) / t.density(x);
      x += step;
      if (Math.abs(step) <= ACCURACY * x) {
        return x;
      }
    }
    return t.inverseCumulativeProbability(probability);
  }

  /** The probability of a t at least this far from 0 to either side. */
  public static double pValue(double t, double degreesOfFreedom) {
    double tail = -Math.abs(t);
    return 2
        * (Double.isInfinite(degreesOfFreedom)
            ? NORMAL.cumulativeProbability(tail)
            : new TDistribution(degreesOfFreedom).cumulativeProbability(tail));
  }

  /** The natural logarithm of the density at t. */
  public static double logDensity(double t, double degreesOfFreedom) {
    return Double.isInfinite(degreesOfFreedom)
        ? NORMAL.logDensity(t)
        : new TDistribution(degreesOfFreedom).logDensity(t);
  }
}
