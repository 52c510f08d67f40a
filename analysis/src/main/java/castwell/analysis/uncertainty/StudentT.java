package castwell.analysis.uncertainty;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Student's t with any degrees of freedom above 0, fractional ones and infinitely many (the normal
 * distribution) as well.
 */
public final class StudentT {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /** So that quantiles are good to the last few digits of a double. */
  private static final double ACCURACY = 1e-14;

  private StudentT() {}

  /**
   * How many standard uncertainties to either side cover with the given probability.
   *
   * @param coverage between 0 and 1
   */
  public static double twoSided(double coverage, double degreesOfFreedom) {
    if (!(coverage > 0 && coverage < 1)) {
      throw new IllegalArgumentException("coverage lies between 0 and 1, not " + coverage);
    }
    double probability = 0.5 + coverage / 2;
    return Double.isInfinite(degreesOfFreedom)
        ? NORMAL.inverseCumulativeProbability(probability)
        : new TDistribution(degreesOfFreedom, ACCURACY).inverseCumulativeProbability(probability);
  }

  /** The probability of a t at least this far from 0 to either side. */
  public static double pValue(double t, double degreesOfFreedom) {
    double tail = -Math.abs(t);
    return 2
        * (Double.isInfinite(degreesOfFreedom)
            ? NORMAL.cumulativeProbability(tail)
            : new TDistribution(degreesOfFreedom).cumulativeProbability(tail));
  }
}
