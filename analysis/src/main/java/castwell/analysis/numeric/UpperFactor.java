package castwell.analysis.numeric;

/**
 * The Cholesky factor R of a symmetric matrix, C = R'R, in place of its upper triangle. Rows are
 * worked on whole and four at a time, which is what a processor does fastest.
 */
public final class UpperFactor {
  private final double[][] r;

  /** Overwrites the matrix. */
  public UpperFactor(double[][] matrix) {
    r = matrix;
    int n = r.length;
    for (int i = 0; i < n; i++) {
      double[] row = r[i];
      int k = 0;
      for (; k + 3 < i; k += 4) {
        subtract(row, i, r[k], r[k + 1], r[k + 2], r[k + 3]);
      }
      for (; k < i; k++) {
        subtract(row, i, r[k]);
      }
      double root = Math.sqrt(row[i]);
      for (int j = i; j < n; j++) {
        row[j] /= root;
      }
    }
  }

  private static void subtract(
      double[] row, int from, double[] a, double[] b, double[] c, double[] d) {
    double a0 = a[from];
    double b0 = b[from];
    double c0 = c[from];
    double d0 = d[from];
    for (int j = from; j < row.length; j++) {
      row[j] -= a0 * a[j] + b0 * b[j] + c0 * c[j] + d0 * d[j];
    }
  }

  private static void subtract(double[] row, int from, double[] a) {
    double a0 = a[from];
    for (int j = from; j < row.length; j++) {
      row[j] -= a0 * a[j];
    }
  }

  /** The log of the matrix' determinant; NaN if it wasn't positive definite. */
  public double logDeterminant() {
    double sum = 0;
    for (int i = 0; i < r.length; i++) {
      sum += Math.log(r[i][i]);
    }
    return 2 * sum;
  }

  /** z with R'z = b. */
  public double[] forward(double[] b) {
    double[] z = b.clone();
    for (int i = 0; i < z.length; i++) {
      z[i] /= r[i][i];
      for (int j = i + 1; j < z.length; j++) {
        z[j] -= r[i][j] * z[i];
      }
    }
    return z;
  }

  /** The last unknowns from a place on, of x with R x = z. */
  public double[] backward(double[] z, int from) {
    int n = z.length;
    double[] x = new double[n - from];
    for (int i = n - 1; i >= from; i--) {
      double sum = z[i];
      for (int j = i + 1; j < n; j++) {
        sum -= r[i][j] * x[j - from];
      }
      x[i - from] = sum / r[i][i];
    }
    return x;
  }

  /** The block of the inverse of C that belongs to the last unknowns, row by row. */
  public double[] inverseBlock(int from) {
    int size = r.length - from;
    double[][] inverse = new double[size][size];
    for (int i = size - 1; i >= 0; i--) {
      double[] row = inverse[i];
      double diagonal = r[from + i][from + i];
      row[i] = 1;
      for (int k = i + 1; k < size; k++) {
        subtract(row, inverse[k], r[from + i][from + k], k);
      }
      for (int j = i; j < size; j++) {
        row[j] /= diagonal;
      }
    }
    double[] block = new double[size * size];
    for (int i = 0; i < size; i++) {
      for (int j = i; j < size; j++) {
        double sum = product(inverse[i], inverse[j], j);
        block[i * size + j] = sum;
        block[j * size + i] = sum;
      }
    }
    return block;
  }

  private static void subtract(double[] row, double[] a, double factor, int from) {
    for (int j = from; j < row.length; j++) {
      row[j] -= factor * a[j];
    }
  }

  /** Four sums side by side, since none needs to wait for another then. */
  private static double product(double[] a, double[] b, int from) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int k = from;
    for (; k + 3 < a.length; k += 4) {
      s0 += a[k] * b[k];
      s1 += a[k + 1] * b[k + 1];
      s2 += a[k + 2] * b[k + 2];
      s3 += a[k + 3] * b[k + 3];
    }
    for (; k < a.length; k++) {
      s0 += a[k] * b[k];
    }
    return s0 + s1 + s2 + s3;
  }
}
