package castwell.analysis.statistic;

/** The largest less the smallest value, in the values' unit; 0 of one value, NaN of none. */
public final class ExtremeSpread {
  private ExtremeSpread() {}

  public static double of(double... values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    double least = values[0];
    double most = values[0];
    for (double value : values) {
      least = Math.min(least, value);
      most = Math.max(most, value);
    }
    return most - least;
  }
}
