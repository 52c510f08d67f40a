package castwell.analysis.statistic;

import java.util.Arrays;
import java.util.Comparator;

/**
 * The adjustment of many p values that keeps one false alarm among all of them as unlikely as a
 * single p value says: the i-th smallest times (n - i + 1), never below the one before, at most 1
 * (Holm, Scand. J. Statist. 6 (1979) 65; R's p.adjust). Empty of none.
 */
public final class Holm {
  private Holm() {}

  /** The adjusted p values, in the order given. */
  public static double[] adjust(double... p) {
    Integer[] order = new Integer[p.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, Comparator.comparingDouble(i -> p[i]));
    double[] adjusted = new double[p.length];
    double least = 0;
    for (int i = 0; i < p.length; i++) {
      least = Math.max(least, Math.min(1, p[order[i]] * (p.length - i)));
      adjusted[order[i]] = least;
    }
    return adjusted;
  }
}
