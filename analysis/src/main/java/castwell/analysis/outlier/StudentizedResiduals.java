package castwell.analysis.outlier;

import java.util.ArrayList;
import java.util.List;

/**
 * Externally studentized residuals of the cell-means model: each shot's distance from the mean of
 * its cell, over what the spread would be without that shot (R: rstudent(lm(speed ~ cell));
 * Belsley, Kuh and Welsch, Regression Diagnostics (1980), 2.1). t = e / (s(i) sqrt(1 - 1/n)), with
 * s(i)2 = (S - e2 / (1 - 1/n)) / (nu - 1), S the sum of squares, nu shots less cells.
 *
 * @param residuals cell by cell, without a unit; NaN of a lone shot in its cell, and where fewer
 *     than two degrees of freedom are left
 * @param pooledSd sqrt(S / nu), in the values' unit; NaN without degrees of freedom
 */
public record StudentizedResiduals(
    List<double[]> residuals, int degreesOfFreedom, double pooledSd) {

  public static StudentizedResiduals of(List<double[]> cells) {
    List<double[]> deviations = new ArrayList<>(cells.size());
    double squares = 0;
    int degrees = 0;
    for (double[] cell : cells) {
      double mean = 0;
      for (double value : cell) {
        mean += value / cell.length;
      }
      double[] deviation = new double[cell.length];
      for (int i = 0; i < cell.length; i++) {
        deviation[i] = cell[i] - mean;
        squares += deviation[i] * deviation[i];
      }
      deviations.add(deviation);
      degrees += Math.max(0, cell.length - 1);
    }
    for (double[] cell : deviations) {
      double free = 1 - 1.0 / cell.length;
      for (int i = 0; i < cell.length; i++) {
        double e = cell[i];
        double left = Math.max(0, squares - e * e / free) / (degrees - 1);
        cell[i] = degrees < 2 || free == 0 ? Double.NaN : e / Math.sqrt(left * free);
      }
    }
    return new StudentizedResiduals(deviations, degrees, Math.sqrt(squares / degrees));
  }
}
