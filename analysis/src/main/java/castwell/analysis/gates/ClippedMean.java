package castwell.analysis.gates;

import castwell.analysis.statistic.Median;
import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * The mean and the standard deviation of values of which a few may be spoilt, in their unit: from
 * the median on, three times over, what lies beyond three standard deviations is pulled in to there
 * (Huber, Robust Statistics, 1981, chapter 6: pseudo-values). What was believed of the spread
 * before weighs as much as a given number of values: s2 = (n0 s0^2 + sum (x - mean)^2) / (n0 + n -
 * 1). Of no values the mean is NaN; of one the spread is the one believed before.
 */
record ClippedMean(int n, double mean, double standardDeviation) {
  private static final int ROUNDS = 3;
  private static final double REACH = 3;

  /**
   * @param believed the standard deviation believed before, above 0
   * @param weight how many values that is worth, at least 1
   */
  static ClippedMean of(double[] values, double believed, double weight) {
    int n = values.length;
    if (n == 0) {
      return new ClippedMean(0, Double.NaN, believed);
    }
    double mean = Median.of(values);
    double sd = believed;
    for (int round = 0; round < ROUNDS; round++) {
      mean += clipped(values, mean, sd).sum() / n;
      double squares = clipped(values, mean, sd).map(far -> far * far).sum();
      sd = Math.sqrt((weight * believed * believed + squares) / (weight + n - 1));
    }
    return new ClippedMean(n, mean, sd);
  }

  private static DoubleStream clipped(double[] values, double mean, double sd) {
    return Arrays.stream(values)
        .map(value -> Math.max(-REACH * sd, Math.min(REACH * sd, value - mean)));
  }

  /** The standard uncertainty of the mean. */
  double standardError() {
    return standardDeviation / Math.sqrt(n);
  }
}
