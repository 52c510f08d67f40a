package castwell.analysis.statistic;

import java.util.function.ToDoubleFunction;

/** All orders of a few values. */
final class Permutations {
  /**
   * The most values whose orders are all counted: 9 values have 362 880 orders, 10 ten times as
   * many.
   */
  static final int MOST = 9;

  /**
   * The tolerance within which two statistics are equal, so that rounding doesn't tell them apart.
   */
  private static final double EQUAL = 1e-9;

  private Permutations() {}

  /** The share of all orders whose statistic reaches that of the values as they stand. */
  static double share(double[] values, ToDoubleFunction<double[]> statistic) {
    double reached = statistic.applyAsDouble(values) - EQUAL;
    double[] order = values.clone();
    int[] count = new int[order.length];
    long all = 1;
    long reaching = 1;
    // By Heap's method one exchange makes the next order.
    int i = 1;
    while (i < order.length) {
      if (count[i] < i) {
        swap(order, i % 2 == 0 ? 0 : count[i], i);
        all++;
        reaching += statistic.applyAsDouble(order) >= reached ? 1 : 0;
        count[i]++;
        i = 1;
      } else {
        count[i] = 0;
        i++;
      }
    }
    return (double) reaching / all;
  }

  private static void swap(double[] values, int i, int j) {
    double kept = values[i];
    values[i] = values[j];
    values[j] = kept;
  }
}
