package castwell.analysis.outlier;

import castwell.analysis.uncertainty.StudentT;
import java.util.ArrayList;
import java.util.List;

/**
 * The shots of a session that don't belong to their cells. Cells are small, so the spread is pooled
 * over the session: the largest externally studentized residual goes when its p value, times the
 * number of shots (Bonferroni), is at most 0.01; then the rest are looked at anew.
 *
 * <p>At most a quarter of a cell goes, and nothing does while fewer than eight degrees of freedom
 * are left to judge by: what would have gone is doubted then, and stays.
 */
public final class PooledStrays {
  public static final double ALPHA = 0.01;
  public static final int FEWEST_DEGREES = 8;
  public static final double MOST_OF_A_CELL = 0.25;

  /**
   * A shot that doesn't fit.
   *
   * @param cell where its cell stands among those given
   * @param index where it stands in that cell
   * @param studentized its residual when it was found
   * @param adjustedP its p value times the number of shots then, at most 1
   */
  public record Stray(int cell, int index, double studentized, double adjustedP) {}

  /**
   * @param excluded in the order found
   * @param doubted those that would have gone but may not
   * @param degreesOfFreedom of the pooled spread that is left
   * @param pooledSd without the excluded, in the values' unit; NaN without degrees of freedom
   */
  public record Findings(
      List<Stray> excluded, List<Stray> doubted, int degreesOfFreedom, double pooledSd) {}

  private final List<double[]> cells;
  private final List<boolean[]> kept;
  private final List<boolean[]> out = new ArrayList<>();
  private final List<Stray> excluded = new ArrayList<>();

  private PooledStrays(List<double[]> cells, List<boolean[]> kept) {
    this.cells = cells;
    this.kept = kept;
    cells.forEach(cell -> out.add(new boolean[cell.length]));
  }

  /**
   * @param cells the shots' speeds, cell by cell
   * @param kept shots that a person brought back: they never go
   */
  public static Findings find(List<double[]> cells, List<boolean[]> kept) {
    return new PooledStrays(cells, kept).findings();
  }

  private Findings findings() {
    while (true) {
      StudentizedResiduals residuals = StudentizedResiduals.of(left());
      List<Stray> suspects = suspects(residuals);
      List<Stray> doubted = suspects.stream().filter(stray -> !mayGo(stray, residuals)).toList();
      if (suspects.size() == doubted.size()) {
        return new Findings(
            List.copyOf(excluded), doubted, residuals.degreesOfFreedom(), residuals.pooledSd());
      }
      Stray worst =
          suspects.stream()
              .filter(stray -> mayGo(stray, residuals))
              .reduce((a, b) -> Math.abs(b.studentized()) > Math.abs(a.studentized()) ? b : a)
              .orElseThrow();
      excluded.add(worst);
      out.get(worst.cell())[worst.index()] = true;
    }
  }

  private List<double[]> left() {
    List<double[]> left = new ArrayList<>(cells.size());
    for (int c = 0; c < cells.size(); c++) {
      double[] cell = new double[cells.get(c).length - gone(c)];
      int next = 0;
      for (int i = 0; i < cells.get(c).length; i++) {
        if (!out.get(c)[i]) {
          cell[next++] = cells.get(c)[i];
        }
      }
      left.add(cell);
    }
    return left;
  }

  private int gone(int cell) {
    int gone = 0;
    for (boolean is : out.get(cell)) {
      gone += is ? 1 : 0;
    }
    return gone;
  }

  private List<Stray> suspects(StudentizedResiduals residuals) {
    int shots = residuals.residuals().stream().mapToInt(cell -> cell.length).sum();
    double degrees = residuals.degreesOfFreedom() - 1.0;
    if (degrees < 1) {
      return List.of();
    }
    double limit = StudentT.twoSided(1 - ALPHA / shots, degrees);
    List<Stray> suspects = new ArrayList<>();
    for (int c = 0; c < cells.size(); c++) {
      double[] studentized = residuals.residuals().get(c);
      int next = 0;
      for (int i = 0; i < cells.get(c).length; i++) {
        if (!out.get(c)[i]) {
          double t = studentized[next++];
          if (Math.abs(t) >= limit) {
            double p = Math.min(1, StudentT.pValue(t, degrees) * shots);
            suspects.add(new Stray(c, i, t, p));
          }
        }
      }
    }
    return suspects;
  }

  private boolean mayGo(Stray stray, StudentizedResiduals residuals) {
    double quota = Math.floor(cells.get(stray.cell()).length * MOST_OF_A_CELL);
    return residuals.degreesOfFreedom() >= FEWEST_DEGREES
        && !kept.get(stray.cell())[stray.index()]
        && gone(stray.cell()) < quota;
  }
}
