package castwell.analysis.outlier;

import castwell.analysis.statistic.Median;
import castwell.analysis.statistic.MedianAbsoluteDeviation;
import java.util.Arrays;

/**
 * The modified z-score 0.6745 (x - median) / MAD, without a unit; a value with a score beyond 3.5
 * is an outlier (Iglewicz and Hoaglin, How to Detect and Handle Outliers (1993)). Where more than
 * half the values are equal, MAD is 0: values equal to the median then score 0, and all others are
 * infinite.
 */
public final class ModifiedZ {
  public static final double LIMIT = 3.5;
  private static final double NORMAL_MAD = 0.6745;

  private ModifiedZ() {}

  public static double[] of(double... values) {
    double median = Median.of(values);
    double mad = MedianAbsoluteDeviation.of(values);
    return Arrays.stream(values).map(value -> score(value, median, mad)).toArray();
  }

  /** The score of one value, given the median and the MAD. */
  public static double score(double value, double median, double mad) {
    return value == median ? 0 : NORMAL_MAD * (value - median) / mad;
  }
}
