package castwell.analysis.statistic;

import java.util.Arrays;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Ordinary least squares: y = b0 + b1 x1 + ... + error. By Householder's QR of the columns after
 * they were centred on their means and scaled, which keeps digits where values are large and their
 * differences small.
 *
 * @param coefficients the intercept first, if there is one
 * @param standardErrors in the same order; NaN without degrees of freedom
 * @param residualSd sqrt(sum of squares / degrees of freedom); NaN without degrees of freedom
 */
public record LinearModel(
    double[] coefficients, double[] standardErrors, double residualSd, int degreesOfFreedom) {

  private static final double SINGULAR = 1e-13;

  /**
   * With an intercept: a row for each observation, a column for each variable.
   *
   * @throws IllegalArgumentException with fewer observations than coefficients, with rows and y
   *     that don't match, and where a column doesn't vary or follows from others
   */
  public static LinearModel fit(double[][] x, double[] y) {
    return fit(x, y, true);
  }

  /** Without an intercept; refuses likewise. */
  public static LinearModel throughOrigin(double[][] x, double[] y) {
    return fit(x, y, false);
  }

  private static LinearModel fit(double[][] x, double[] y, boolean intercept) {
    int n = y.length;
    int columns = x.length == 0 ? 0 : x[0].length;
    int parameters = columns + (intercept ? 1 : 0);
    if (n < parameters || columns == 0) {
      throw new IllegalArgumentException(
          "%d observations can't tell %d coefficients".formatted(n, parameters));
    }
    if (x.length != n || Arrays.stream(x).anyMatch(row -> row.length != columns)) {
      throw new IllegalArgumentException(
          "%d values of y need as many rows, all of one length".formatted(n));
    }
    double[] means = new double[columns];
    double[] scales = new double[columns];
    double[][] z = new double[n][columns];
    for (int j = 0; j < columns; j++) {
      means[j] = intercept ? mean(x, j) : 0;
      for (int i = 0; i < n; i++) {
        z[i][j] = x[i][j] - means[j];
        scales[j] = Math.hypot(scales[j], z[i][j]);
      }
      if (!(scales[j] > SINGULAR * Math.abs(means[j]))) {
        throw new IllegalArgumentException(
            "column %d doesn't vary, or isn't all numbers".formatted(j + 1));
      }
      for (int i = 0; i < n; i++) {
        z[i][j] /= scales[j];
      }
    }
    double meanY = intercept ? Mean.of(y) : 0;
    double[] centredY = new double[n];
    for (int i = 0; i < n; i++) {
      centredY[i] = y[i] - meanY;
    }
    RealMatrix design = MatrixUtils.createRealMatrix(z);
    QRDecomposition qr = new QRDecomposition(design, SINGULAR);
    if (!qr.getSolver().isNonSingular()) {
      throw new IllegalArgumentException("the columns don't vary apart: one follows from others");
    }
    double[] b = qr.getSolver().solve(MatrixUtils.createRealVector(centredY)).toArray();
    double[] fitted = design.operate(b);
    double sumSquares = 0;
    for (int i = 0; i < n; i++) {
      double residual = centredY[i] - fitted[i];
      sumSquares += residual * residual;
    }
    int degrees = n - parameters;
    double s = degrees == 0 ? Double.NaN : Math.sqrt(sumSquares / degrees);
    RealMatrix inverse =
        MatrixUtils.inverse(qr.getR().getSubMatrix(0, columns - 1, 0, columns - 1));
    RealMatrix covariance = inverse.multiply(inverse.transpose());
    return assembled(b, covariance, means, scales, meanY, s, n, intercept, degrees);
  }

  private static LinearModel assembled(
      double[] b,
      RealMatrix covariance,
      double[] means,
      double[] scales,
      double meanY,
      double s,
      int n,
      boolean intercept,
      int degrees) {
    int first = intercept ? 1 : 0;
    double[] coefficients = new double[b.length + first];
    double[] errors = new double[b.length + first];
    double constant = meanY;
    double[] towards = new double[b.length];
    for (int j = 0; j < b.length; j++) {
      coefficients[j + first] = b[j] / scales[j];
      errors[j + first] = s * Math.sqrt(covariance.getEntry(j, j)) / scales[j];
      constant -= coefficients[j + first] * means[j];
      towards[j] = means[j] / scales[j];
    }
    if (intercept) {
      coefficients[0] = constant;
      double variance = 1.0 / n;
      double[] carried = covariance.operate(towards);
      for (int j = 0; j < b.length; j++) {
        variance += towards[j] * carried[j];
      }
      errors[0] = s * Math.sqrt(variance);
    }
    return new LinearModel(coefficients, errors, s, degrees);
  }

  private static double mean(double[][] x, int column) {
    double[] values = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      values[i] = x[i][column];
    }
    return Mean.of(values);
  }
}
