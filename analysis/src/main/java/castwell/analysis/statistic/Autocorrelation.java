package castwell.analysis.statistic;

/**
 * Lag-1 autocorrelation: sum (x[i] - m)(x[i+1] - m) over sum (x[i] - m)2, m the mean of all
 * (NIST/SEMATECH e-Handbook, 1.3.5.12). Between -1 and 1; NaN of values that are all equal.
 */
public final class Autocorrelation {
  private Autocorrelation() {}

  public static double lag1(double... values) {
    double mean = Mean.of(values);
    double products = 0;
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      double deviation = values[i] - mean;
      squares += deviation * deviation;
      products += i + 1 < values.length ? deviation * (values[i + 1] - mean) : 0;
    }
    return products / squares;
  }
}
