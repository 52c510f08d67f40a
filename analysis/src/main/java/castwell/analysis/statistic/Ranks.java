package castwell.analysis.statistic;

import java.util.Arrays;
import java.util.Comparator;

/** The ranks of values, from 1 on; equal values share the mean of their ranks. */
final class Ranks {
  private Ranks() {}

  static double[] of(double[] values) {
    Integer[] order = new Integer[values.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, Comparator.comparingDouble(i -> values[i]));
    double[] ranks = new double[values.length];
    int i = 0;
    while (i < order.length) {
      int j = i;
      while (j + 1 < order.length && values[order[j + 1]] == values[order[i]]) {
        j++;
      }
      for (int k = i; k <= j; k++) {
        ranks[order[k]] = (i + j) / 2.0 + 1;
      }
      i = j + 1;
    }
    return ranks;
  }
}
