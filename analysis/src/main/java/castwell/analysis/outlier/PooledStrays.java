package castwell.analysis.outlier;

import castwell.analysis.uncertainty.StudentT;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The shots of a session that don't belong to their cells. Cells are small, so the spread is pooled
 * over the session: the shot with the largest externally studentized residual is removed when its p
 * value, times the number of shots (Bonferroni), is at most 0.01; then the rest are looked at anew.
 *
 * <p>At most a quarter of a cell is removed. Nothing is removed while fewer than eight degrees of
 * freedom are left to judge by, or while no other shot differs from its cell. A shot that would
 * otherwise have been removed stays then, and is reported as doubted.
 */
public final class PooledStrays {
  public static final double ALPHA = 0.01;
  public static final int FEWEST_DEGREES = 8;
  public static final double MOST_OF_A_CELL = 0.25;

  /**
   * A residual beyond this occurs only where nothing else spreads at all: it is a display's step,
   * not a stray.
   */
  private static final double FARTHEST = 1e6;

  /**
   * A shot that doesn't fit its cell.
   *
   * @param cell the index of its cell among those given
   * @param index its index in that cell
   * @param studentized its residual when it was found
   * @param adjustedP its p value times the number of shots left then, at most 1
   */
  public record Stray(int cell, int index, double studentized, double adjustedP) {}

  /**
   * What was found in a session.
   *
   * @param excluded the removed shots, in the order found
   * @param doubted the shots that would have been removed but may not be
   * @param degreesOfFreedom the degrees of freedom of the pooled spread that is left
   * @param pooledSd the pooled standard deviation without the excluded shots, in the values' unit;
   *     NaN without degrees of freedom
   */
  public record Findings(
      List<Stray> excluded, List<Stray> doubted, int degreesOfFreedom, double pooledSd) {}

  private final List<CellLeft> cells = new ArrayList<>();
  private final List<Stray> excluded = new ArrayList<>();
  private int shots;
  private int degrees;

  private PooledStrays(List<double[]> values, List<boolean[]> kept) {
    for (int c = 0; c < values.size(); c++) {
      double[] cell = values.get(c);
      cells.add(new CellLeft(cell, kept.get(c), (int) (cell.length * MOST_OF_A_CELL)));
      shots += cell.length;
      degrees += Math.max(0, cell.length - 1);
    }
  }

  /**
   * @param cells the shots' speeds, cell by cell
   * @param kept which shots a person brought back, so that they are never removed
   */
  public static Findings find(List<double[]> cells, List<boolean[]> kept) {
    return new PooledStrays(cells, kept).findings();
  }

  private Findings findings() {
    Optional<Stray> next = next();
    while (next.isPresent()) {
      Stray stray = next.get();
      excluded.add(stray);
      cells.get(stray.cell()).remove(stray.index());
      shots--;
      degrees--;
      next = next();
    }
    StudentizedResiduals residuals =
        StudentizedResiduals.of(cells.stream().map(CellLeft::left).toList());
    return new Findings(List.copyOf(excluded), doubted(residuals), degrees, residuals.pooledSd());
  }

  /** The worst-fitting of the shots that may be removed, if it is bad enough to be removed. */
  private Optional<Stray> next() {
    if (degrees < FEWEST_DEGREES) {
      return Optional.empty();
    }
    double squares = cells.stream().mapToDouble(CellLeft::squares).sum();
    int worst = -1;
    double farthest = 0;
    for (int c = 0; c < cells.size(); c++) {
      CellLeft cell = cells.get(c);
      if (cell.farthest() >= 0) {
        double t = studentized(cell, squares);
        if (Math.abs(t) > Math.abs(farthest)) {
          worst = c;
          farthest = t;
        }
      }
    }
    return worst >= 0 && adjustedP(farthest) <= ALPHA && Math.abs(farthest) < FARTHEST
        ? Optional.of(stray(worst, cells.get(worst).farthest(), farthest))
        : Optional.empty();
  }

  private double studentized(CellLeft cell, double squares) {
    return StudentizedResiduals.studentized(
        cell.deviation(cell.farthest()), cell.left().length, squares, degrees);
  }

  private List<Stray> doubted(StudentizedResiduals residuals) {
    List<Stray> doubted = new ArrayList<>();
    if (degrees < 2) {
      return doubted;
    }
    double limit = StudentT.twoSided(1 - ALPHA / shots, degrees - 1.0);
    for (int c = 0; c < cells.size(); c++) {
      double[] studentized = residuals.residuals().get(c);
      int at = 0;
      for (int i = 0; at < studentized.length; i++) {
        if (!cells.get(c).isOut(i)) {
          double t = studentized[at++];
          if (Math.abs(t) >= limit) {
            doubted.add(stray(c, i, t));
          }
        }
      }
    }
    return doubted;
  }

  private Stray stray(int cell, int index, double studentized) {
    return new Stray(cell, index, studentized, adjustedP(studentized));
  }

  private double adjustedP(double studentized) {
    return Math.min(1, StudentT.pValue(studentized, degrees - 1.0) * shots);
  }
}
