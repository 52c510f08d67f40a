package castwell.analysis.statistic;

import java.util.Optional;

/**
 * y = intercept + slope x by ordinary least squares: R's lm(y ~ x). The residual sd is NaN, and so
 * are the standard errors, of just two points.
 */
public record StraightLine(
    double intercept,
    double slope,
    double interceptSe,
    double slopeSe,
    double residualSd,
    int degreesOfFreedom) {

  /** Empty unless there are two different x at least. */
  public static Optional<StraightLine> fit(double[] x, double[] y) {
    if (ExtremeSpread.of(x) > 0) {
      double[][] rows = new double[x.length][];
      for (int i = 0; i < x.length; i++) {
        rows[i] = new double[] {x[i]};
      }
      LinearModel model = LinearModel.fit(rows, y);
      return Optional.of(
          new StraightLine(
              model.coefficients()[0],
              model.coefficients()[1],
              model.standardErrors()[0],
              model.standardErrors()[1],
              model.residualSd(),
              model.degreesOfFreedom()));
    }
    return Optional.empty();
  }

  public double at(double x) {
    return intercept + slope * x;
  }
}
