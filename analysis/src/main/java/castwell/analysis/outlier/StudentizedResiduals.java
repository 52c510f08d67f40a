package castwell.analysis.outlier;

import castwell.analysis.statistic.Mean;
import java.util.ArrayList;
import java.util.List;

/**
 * Externally studentized residuals of the cell-means model: each shot's distance from the mean of
 * its cell, over what the spread would be without that shot (R: rstudent(lm(speed ~ cell));
 * Belsley, Kuh and Welsch, Regression Diagnostics (1980), 2.1). t = e / (s(i) sqrt(1 - 1/n)), with
 * s(i)2 = (S - e2 / (1 - 1/n)) / (nu - 1), where S is the sum of squares and nu the number of shots
 * less that of cells.
 *
 * @param residuals the residuals cell by cell, without a unit; NaN for a lone shot in its cell,
 *     where fewer than two degrees of freedom are left, and where nothing spreads at all; infinite
 *     for a shot without which nothing would spread
 * @param pooledSd sqrt(S / nu), in the values' unit; NaN without degrees of freedom
 */
public record StudentizedResiduals(
    List<double[]> residuals, int degreesOfFreedom, double pooledSd) {

  public static StudentizedResiduals of(List<double[]> cells) {
    List<double[]> deviations = new ArrayList<>(cells.size());
    double squares = 0;
    int degrees = 0;
    for (double[] cell : cells) {
      double mean = Mean.of(cell);
      double[] deviation = new double[cell.length];
      for (int i = 0; i < cell.length; i++) {
        deviation[i] = cell[i] - mean;
        squares += deviation[i] * deviation[i];
      }
      deviations.add(deviation);
      degrees += Math.max(0, cell.length - 1);
    }
    for (double[] cell : deviations) {
      for (int i = 0; i < cell.length; i++) {
        cell[i] = studentized(cell[i], cell.length, squares, degrees);
      }
    }
    return new StudentizedResiduals(deviations, degrees, Math.sqrt(squares / degrees));
  }

  static double studentized(double deviation, int cellSize, double squares, int degrees) {
    if (cellSize < 2 || degrees < 2) {
      return Double.NaN;
    }
    double free = 1 - 1.0 / cellSize;
    double without = Math.max(0, squares - deviation * deviation / free) / (degrees - 1);
    return deviation / Math.sqrt(without * free);
  }
}
