package castwell.analysis.statistic;

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
    if (!(ExtremeSpread.of(x) > 0)) {
      return Optional.empty();
    }
    double meanX = Mean.of(x);
    double meanY = Mean.of(y);
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < n; i++) {
      xx += (x[i] - meanX) * (x[i] - meanX);
      xy += (x[i] - meanX) * (y[i] - meanY);
    }
    double slope = xy / xx;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double residual = y[i] - meanY - slope * (x[i] - meanX);
      squares += residual * residual;
    }
    int degrees = n - 2;
    double sd = degrees == 0 ? Double.NaN : Math.sqrt(squares / degrees);
    double slopeSe = sd / Math.sqrt(xx);
    return Optional.of(
        new StraightLine(
            meanY - slope * meanX,
            slope,
            Math.hypot(sd / Math.sqrt(n), slopeSe * meanX),
            slopeSe,
            sd,
            degrees,
            meanX,
            meanY));
  }

  public double at(double x) {
    return meanY + slope * (x - meanX);
  }

  /**
   * The standard error of the line itself at x, not of one more y there: s sqrt(1 / n + (x -
   * meanX)2 / sum (x[i] - meanX)2), R's predict(..., se.fit = TRUE).
   */
  public double seAt(double x) {
    return Math.hypot(residualSd / Math.sqrt(degreesOfFreedom + 2.0), slopeSe * (x - meanX));
  }
}
