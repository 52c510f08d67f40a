package castwell.analysis.statistic;

import java.util.Arrays;
import java.util.Optional;

/**
 * y = intercept + slope x by ordinary least squares, from distances to the means, which keeps
 * digits where values are large and their differences small: R's lm(y ~ x). Slope in y's unit over
 * x's, the rest in y's. The residual sd is NaN, and so are the standard errors, of just two points.
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
   * Empty unless there are two different x at least.
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
   * The same of values that share an x, by their means.
   *
   * @param count how many values each x has, at least 1
   * @param meanY their means
   * @param within the sum of the squares of their deviations from those means
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

  /** From the first value on, which keeps digits. */
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
