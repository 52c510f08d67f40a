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
    Integer[] order = order(p);
    double[] adjusted = new double[p.length];
    double least = 0;
    for (int i = 0; i < p.length; i++) {
      least = Math.max(least, Math.min(1, p[order[i]] * (p.length - i)));
      adjusted[order[i]] = least;
    }
    return adjusted;
  }

  /**
   * The level at which each p value was looked at, in the order given: alpha / (n - i + 1) for the
   * i-th smallest, and that of the first which isn't below its own for all from there on. An
   * interval of that much less than 1 leaves out 0 just where the adjusted p value is below alpha.
   */
  public static double[] levels(double alpha, double... p) {
    Integer[] order = order(p);
    double[] levels = new double[p.length];
    boolean goesOn = true;
    double level = 0;
    for (int i = 0; i < p.length; i++) {
      level = goesOn ? alpha / (p.length - i) : level;
      goesOn = goesOn && p[order[i]] < level;
      levels[order[i]] = level;
    }
    return levels;
  }

  private static Integer[] order(double... p) {
    Integer[] order = new Integer[p.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, Comparator.comparingDouble(i -> p[i]));
    return order;
  }
}
