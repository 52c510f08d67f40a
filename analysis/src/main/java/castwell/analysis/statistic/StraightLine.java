package castwell.analysis.statistic;

import java.util.Arrays;
import java.util.Optional;

/**
 * The line y = intercept + slope x by ordinary least squares, as R's lm(y ~ x). It is made from
 * distances to the means, which keeps digits where values are large and their differences small.
 * The slope is in y's unit over x's, the rest in y's unit. With just two points the residual sd and
 * the standard errors are NaN.
 */
public record StraightLine(
    double intercept,
    double slope,
    double interceptSe,
    double slopeSe,
    double residualSd,
    int degreesOfFreedom,
    double meanX,
    double meanY) {

  /**
   * The line through points; empty unless at least two x differ.
   *
   * @throws IllegalArgumentException unless there is a y for each x
   */
  public static Optional<StraightLine> fit(double[] x, double[] y) {
    int n = x.length;
    if (y.length != n) {
      throw new IllegalArgumentException(
          "a line needs a y for each x, not %d for %d".formatted(y.length, n));
    }
    int[] once = new int[n];
    Arrays.fill(once, 1);
    return fit(x, once, y, 0);
  }

  /**
   * The line through values of which several may share an x, given by their means.
   *
   * @param count the number of values at each x, at least 1
   * @param meanY the mean of the values at each x
   * @param within the sum of the squares of the values' deviations from those means
   */
  public static Optional<StraightLine> fit(double[] x, int[] count, double[] meanY, double within) {
    if (x.length == 0 || !(ExtremeSpread.of(x) > 0)) {
      return Optional.empty();
    }
    int n = Arrays.stream(count).sum();
    double middleX = mean(x, count, n);
    double middleY = mean(meanY, count, n);
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < x.length; i++) {
      xx += count[i] * (x[i] - middleX) * (x[i] - middleX);
      xy += count[i] * (x[i] - middleX) * (meanY[i] - middleY);
    }
    double slope = xy / xx;
    double squares = within;
    for (int i = 0; i < x.length; i++) {
      double residual = meanY[i] - middleY - slope * (x[i] - middleX);
      squares += count[i] * residual * residual;
    }
    int degrees = n - 2;
    double sd = degrees == 0 ? Double.NaN : Math.sqrt(squares / degrees);
    double slopeSe = sd / Math.sqrt(xx);
    return Optional.of(
        new StraightLine(
            middleY - slope * middleX,
            slope,
            Math.hypot(sd / Math.sqrt(n), slopeSe * middleX),
            slopeSe,
            sd,
            degrees,
            middleX,
            middleY));
  }

  /** The weighted mean, summed from differences to the first value, which keeps digits. */
  private static double mean(double[] values, int[] count, int n) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += count[i] * (values[i] - values[0]);
    }
    return values[0] + sum / n;
  }

  public double at(double x) {
    return meanY + slope * (x - meanX);
  }
}
