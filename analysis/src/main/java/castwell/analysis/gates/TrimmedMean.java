package castwell.analysis.gates;

import castwell.analysis.statistic.Median;
import castwell.analysis.statistic.MedianAbsoluteDeviation;
import java.util.Arrays;

/**
 * The mean and the standard deviation of values of which some may be spoilt, up to two fifths of
 * them, in their unit: what lies beyond three standard deviations of the median is left out, by the
 * median absolute deviation first (Hampel's identifier, J. Am. Stat. Assoc. 69 (1974) 383, from
 * memory) and then by what was kept. What was believed of the spread before weighs as much as a
 * given number of values: s2 = (n0 s0^2 + sum (x - mean)^2) / (n0 + n - 1). Of no values the mean
 * is NaN; of one the spread is the one believed before.
 *
 * @param n how many values were kept
 */
record TrimmedMean(int n, double mean, double standardDeviation) {
  private static final int ROUNDS = 2;
  private static final double REACH = 3;

  /** From the median absolute deviation to the standard deviation of a normal distribution. */
  private static final double NORMAL = 1.4826;

  /** How many values tell as much of the spread by it as one does by squares. */
  private static final double EFFICIENCY = 0.37;

  /**
   * @param believed the standard deviation believed before, above 0
   * @param weight how many values that is worth, at least 1
   */
  static TrimmedMean of(double[] values, double believed, double weight) {
    if (values.length == 0) {
      return new TrimmedMean(0, Double.NaN, believed);
    }
    double deviation = NORMAL * MedianAbsoluteDeviation.of(values);
    double told = EFFICIENCY * (values.length - 1);
    TrimmedMean found =
        new TrimmedMean(
            values.length,
            Median.of(values),
            Math.sqrt(
                (weight * believed * believed + told * deviation * deviation) / (weight + told)));
    for (int round = 0; round < ROUNDS; round++) {
      found = kept(values, found, believed, weight);
    }
    return found;
  }

  private static TrimmedMean kept(
      double[] values, TrimmedMean before, double believed, double weight) {
    double[] kept =
        Arrays.stream(values)
            .filter(value -> Math.abs(value - before.mean) <= REACH * before.standardDeviation)
            .toArray();
    if (kept.length == 0) {
      return before;
    }
    double mean = Arrays.stream(kept).average().orElseThrow();
    double squares = Arrays.stream(kept).map(value -> (value - mean) * (value - mean)).sum();
    double variance = (weight * believed * believed + squares) / (weight + kept.length - 1);
    return new TrimmedMean(kept.length, mean, Math.sqrt(variance));
  }

  /** The standard uncertainty of the mean. */
  double standardError() {
    return standardDeviation / Math.sqrt(n);
  }
}
