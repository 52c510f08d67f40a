package castwell.analysis.compare;

import castwell.analysis.cell.Cell;
import castwell.analysis.statistic.PooledSd;
import java.util.List;

/**
 * A shooter's own spread, in m/s: sqrt(sum (n - 1) s2 / sum (n - 1)) over cells, the usual pooled
 * standard deviation.
 *
 * @param sdMps the pooled standard deviation; NaN without degrees of freedom
 */
public record PooledSpread(double sdMps, int degreesOfFreedom) {

  /**
   * @param sumSquares the sum of the squared deviations from the cells' means
   * @param degreesOfFreedom the number of shots less the number of cells
   */
  public static PooledSpread of(double sumSquares, int degreesOfFreedom) {
    double sd = degreesOfFreedom > 0 ? Math.sqrt(sumSquares / degreesOfFreedom) : Double.NaN;
    return new PooledSpread(sd, degreesOfFreedom);
  }

  public static PooledSpread of(List<Cell> cells) {
    PooledSd pooled = PooledSd.of(cells.stream().map(Cell::speedsMps).toList());
    return new PooledSpread(pooled.sd(), pooled.degreesOfFreedom());
  }
}
