package castwell.analysis.numeric;

import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/** Newton's way to the top of a posterior, by central differences with one step for all. */
public final class ModeSearch {
  private static final int AXES = 3;
  static final double STEP = 0.05;
  private static final double LEAST_CURVATURE = 0.5;
  private static final double SMALL = 1e-7;
  private static final double TINY = 1e-9;
  private static final double ROUNDING = 1e-12;
  private static final int MOST_STEPS = 50;

  private final ToDoubleFunction<double[]> logDensity;
  private double[] place;
  private double height;
  private final double[] gradient = new double[AXES];
  private EigenDecompositionSymmetric curvature;

  private ModeSearch(ToDoubleFunction<double[]> logDensity, double[] start) {
    this.logDensity = logDensity;
    place = start.clone();
  }

  /** The mode, with a factor L of the inverse of the curvature there, LL'. */
  public record Mode(double[] place, double[][] factor) {}

  /**
   * @param logDensity of three variables
   */
  public static Mode from(ToDoubleFunction<double[]> logDensity, double[] start) {
    ModeSearch search = new ModeSearch(logDensity, start);
    search.look();
    for (int i = 0; i < MOST_STEPS; i++) {
      double size = search.go();
      search.look();
      if (size < SMALL) {
        break;
      }
    }
    return new Mode(search.place, search.factor());
  }

  /**
   * The height here and at 18 places around, sorted so that what has the same first two coordinates
   * comes together.
   */
  private void look() {
    double[][][] f = new double[AXES][AXES][AXES];
    for (int d = -1; d <= 1; d++) {
      for (int w = -1; w <= 1; w++) {
        for (int a = -1; a <= 1; a++) {
          if (d == 0 || w == 0 || a == 0) {
            f[d + 1][w + 1][a + 1] = logDensity.applyAsDouble(moved(d * STEP, w * STEP, a * STEP));
          }
        }
      }
    }
    height = f[1][1][1];
    RealMatrix minusHessian = MatrixUtils.createRealMatrix(AXES, AXES);
    for (int i = 0; i < AXES; i++) {
      gradient[i] = (at(f, i, 1, i, 0) - at(f, i, -1, i, 0)) / (2 * STEP);
      minusHessian.setEntry(
          i, i, -(at(f, i, 1, i, 0) - 2 * height + at(f, i, -1, i, 0)) / (STEP * STEP));
      for (int j = 0; j < i; j++) {
        double mixed =
            at(f, i, 1, j, 1) - at(f, i, 1, j, -1) - at(f, i, -1, j, 1) + at(f, i, -1, j, -1);
        minusHessian.setEntry(i, j, -mixed / (4 * STEP * STEP));
        minusHessian.setEntry(j, i, -mixed / (4 * STEP * STEP));
      }
    }
    curvature = new EigenDecompositionSymmetric(minusHessian);
  }

  private double[] moved(double... by) {
    double[] other = place.clone();
    for (int i = 0; i < AXES; i++) {
      other[i] += by[i];
    }
    return other;
  }

  private static double at(double[][][] f, int i, int byI, int j, int byJ) {
    int[] at = {1, 1, 1};
    at[i] += byI;
    at[j] += byJ;
    return f[at[0]][at[1]][at[2]];
  }

  private double stretch(int k) {
    return Math.max(curvature.getEigenvalue(k), LEAST_CURVATURE);
  }

  /** One step, no longer than 1 on any axis; returns its longest side. */
  private double go() {
    double[] step = new double[AXES];
    for (int k = 0; k < AXES; k++) {
      double[] axis = curvature.getEigenvector(k).toArray();
      double along = 0;
      for (int i = 0; i < AXES; i++) {
        along += axis[i] * gradient[i];
      }
      for (int i = 0; i < AXES; i++) {
        step[i] += axis[i] * along / stretch(k);
      }
    }
    double size = Math.max(Math.abs(step[0]), Math.max(Math.abs(step[1]), Math.abs(step[2])));
    double factor = Math.min(1, 1 / size);
    double[] next = moved(factor * step[0], factor * step[1], factor * step[2]);
    while (!(logDensity.applyAsDouble(next) >= height - ROUNDING) && factor * size > TINY) {
      factor /= 2;
      next = moved(factor * step[0], factor * step[1], factor * step[2]);
    }
    place = next;
    return factor * size;
  }

  private double[][] factor() {
    double[][] covariance = new double[AXES][AXES];
    for (int k = 0; k < AXES; k++) {
      double[] axis = curvature.getEigenvector(k).toArray();
      for (int i = 0; i < AXES; i++) {
        for (int j = 0; j < AXES; j++) {
          covariance[i][j] += axis[i] * axis[j] / stretch(k);
        }
      }
    }
    new UpperFactor(covariance); // it stands in its place then
    double[][] lower = new double[AXES][AXES];
    for (int i = 0; i < AXES; i++) {
      for (int j = 0; j <= i; j++) {
        lower[i][j] = covariance[j][i];
      }
    }
    return lower;
  }
}
