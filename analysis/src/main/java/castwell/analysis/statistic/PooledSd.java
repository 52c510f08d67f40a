package castwell.analysis.statistic;

import java.util.List;

/**
 * The standard deviation within cells, pooled over them: the root of the sum of squares about the
 * cells' own means over nu, the number of values less that of cells with any (R: sigma(lm(value ~
 * cell))).
 *
 * @param sd in the values' unit; NaN without degrees of freedom
 */
public record PooledSd(double sd, int degreesOfFreedom) {

  public static PooledSd of(List<double[]> cells) {
    double squares = 0;
    int degrees = 0;
    for (double[] cell : cells) {
      double mean = Mean.of(cell);
      for (double value : cell) {
        squares += (value - mean) * (value - mean);
      }
      degrees += Math.max(0, cell.length - 1);
    }
    return new PooledSd(Math.sqrt(squares / degrees), degrees);
  }
}
