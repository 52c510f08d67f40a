package castwell.analysis.compare;

import castwell.analysis.cell.CellSums;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.List;

/**
 * How one arrow's mean speed from one bow changed, by the repeats alone: neither the days nor the
 * gates are in it. It is the difference of two means that Welch's test looks at (Biometrika 34
 * (1947) 28).
 *
 * @param beforeMps the mean of all shots before; unbounded for a lone shot
 */
public record ArrowChange(
    String bow,
    String arrow,
    double massKg,
    int nBefore,
    int nAfter,
    Quantity beforeMps,
    Quantity afterMps) {

  /** After less before. */
  public Quantity changeMps() {
    return afterMps.minus(beforeMps);
  }

  /**
   * @param before at least one cell with shots that count, all of one bow and arrow, as those of
   *     {@code after}
   */
  public static ArrowChange of(List<CellSums> before, List<CellSums> after) {
    CellSums cell = after.get(0);
    return new ArrowChange(
        cell.name().bow(),
        cell.name().arrow(),
        cell.massKg(),
        shots(before),
        shots(after),
        mean("before", before),
        mean("after", after));
  }

  private static int shots(List<CellSums> cells) {
    return cells.stream().mapToInt(CellSums::n).sum();
  }

  private static Quantity mean(String when, List<CellSums> cells) {
    int n = shots(cells);
    double mean = cells.stream().mapToDouble(cell -> cell.n() * cell.meanMps()).sum() / n;
    double squares =
        cells.stream()
            .mapToDouble(cell -> cell.sumSquares() + cell.n() * Math.pow(cell.meanMps() - mean, 2))
            .sum();
    double u = n == 1 ? Double.POSITIVE_INFINITY : Math.sqrt(squares / (n - 1) / n);
    return Quantity.of(mean, u, new Source("repeats " + when, Kind.OWN, Math.max(1, n - 1)));
  }
}
