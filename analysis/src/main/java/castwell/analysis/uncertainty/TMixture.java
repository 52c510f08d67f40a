package castwell.analysis.uncertainty;

import org.hipparchus.distribution.continuous.TDistribution;

/**
 * A result whose probability is spread over several Student's t distributions, one for each way in
 * which what isn't known could be. Its intervals and its p value come from this one distribution,
 * so that they can't disagree.
 */
public final class TMixture {
  private static final double ACCURACY = 1e-12;
  private static final int MOST_STEPS = 200;
  private static final double FAR = 4;

  private final double value;
  private final double[] mean;
  private final double[] sd;
  private final TDistribution[] laws;
  private final double[] weight;
  private final double standardUncertainty;
  private final double degreesOfFreedom;

  /**
   * @param value what is told of it, as a rule the weighted mean
   * @param mean where each part lies
   * @param variance squares of the parts' scales, above 0
   * @param degrees their degrees of freedom
   * @param weight adding up to 1
   */
  public TMixture(
      double value, double[] mean, double[] variance, double[] degrees, double[] weight) {
    this.value = value;
    this.mean = mean.clone();
    this.weight = weight.clone();
    sd = new double[mean.length];
    laws = new TDistribution[mean.length];
    double centre = 0;
    double scale = 0;
    double shots = 0;
    for (int g = 0; g < sd.length; g++) {
      sd[g] = Math.sqrt(variance[g]);
      laws[g] = g > 0 && degrees[g] == degrees[g - 1] ? laws[g - 1] : new TDistribution(degrees[g]);
      centre += weight[g] * mean[g];
      scale += weight[g] * variance[g];
      shots += weight[g] / degrees[g];
    }
    double total = 0;
    double spread = 0;
    for (int g = 0; g < sd.length; g++) {
      double away = mean[g] - centre;
      total += weight[g] * (variance[g] + away * away);
      spread += weight[g] * (variance[g] - scale) * (variance[g] - scale);
    }
    standardUncertainty = Math.sqrt(total);
    degreesOfFreedom = 1 / (spread / (2 * scale * scale) + shots);
  }

  public double value() {
    return value;
  }

  /** The standard deviation of all parts together, each taken by its scale. */
  public double standardUncertainty() {
    return standardUncertainty;
  }

  /** About as many degrees of freedom as the whole has: for words, not for intervals. */
  public double degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /** The probability that the true value lies below x. */
  public double below(double x) {
    double sum = 0;
    for (int g = 0; g < sd.length; g++) {
      sum += weight[g] * laws[g].cumulativeProbability((x - mean[g]) / sd[g]);
    }
    return sum;
  }

  /** The probability that the true value lies above x. */
  public double above(double x) {
    double sum = 0;
    for (int g = 0; g < sd.length; g++) {
      sum += weight[g] * laws[g].cumulativeProbability((mean[g] - x) / sd[g]);
    }
    return sum;
  }

  /** The density of the true value at x. */
  public double density(double x) {
    double sum = 0;
    for (int g = 0; g < sd.length; g++) {
      sum += weight[g] * laws[g].density((x - mean[g]) / sd[g]) / sd[g];
    }
    return sum;
  }

  /** The interval that leaves out as much below as above. */
  public Interval interval(double coverage) {
    double tail = (1 - coverage) / 2;
    return new Interval(quantile(tail, false), quantile(tail, true));
  }

  /** The value with the interval that leaves out as much below as above. */
  public Estimate estimate(double coverage) {
    return new Estimate(value, interval(coverage));
  }

  /** Two-sided, of the hypothesis that the true value is 0. */
  public double pValue() {
    return Math.min(1, 2 * Math.min(below(0), above(0)));
  }

  /** Newton's steps within what is sure to hold it; half of that where a step leads out. */
  private double quantile(double tail, boolean upper) {
    double reach = FAR * standardUncertainty;
    while (tail(value + sign(upper) * reach, upper) > tail) {
      reach *= 2;
    }
    double inner = value - sign(upper) * reach;
    double outer = value + sign(upper) * reach;
    while (tail(inner, upper) < tail) {
      inner -= sign(upper) * reach;
    }
    double x = value + sign(upper) * 2 * standardUncertainty;
    for (int i = 0; i < MOST_STEPS; i++) {
      double surplus = tail(x, upper) - tail;
      if (surplus > 0) {
        inner = x;
      } else {
        outer = x;
      }
      double next = x + sign(upper) * surplus / density(x);
      if (!(next > Math.min(inner, outer) && next < Math.max(inner, outer))) {
        next = (inner + outer) / 2;
      }
      double step = Math.abs(next - x);
      x = next;
      if (step <= ACCURACY * standardUncertainty) {
        break;
      }
    }
    return x;
  }

  private static int sign(boolean upper) {
    return upper ? 1 : -1;
  }

  private double tail(double x, boolean upper) {
    return upper ? above(x) : below(x);
  }
}
