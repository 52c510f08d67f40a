package castwell.analysis.cell;

import castwell.analysis.statistic.ExtremeSpread;
import castwell.analysis.statistic.Mean;
import java.util.Arrays;

/**
 * A cell by its sums: all that a mean or a fit can use of its shots.
 *
 * @param n how many shots count, 0 of a cell in which none does
 * @param meanMps NaN without any
 * @param sumSquares of the deviations from the mean, in m2/s2
 * @param slowestMps NaN without any
 * @param gatesMeanSquare what the gates alone add to each shot, squared, in the mean
 * @param setAside how many don't count
 */
public record CellSums(
    CellName name,
    double massKg,
    SetUp setUp,
    int n,
    double meanMps,
    double sumSquares,
    double slowestMps,
    double fastestMps,
    double gatesMeanSquare,
    int setAside) {

  public static CellSums of(Cell cell) {
    double[] speeds = cell.speedsMps();
    double mean = Mean.of(speeds);
    double squares = Arrays.stream(speeds).map(v -> (v - mean) * (v - mean)).sum();
    double slowest = Arrays.stream(speeds).min().orElse(Double.NaN);
    return new CellSums(
        cell.name(),
        cell.massKg(),
        cell.setUp(),
        speeds.length,
        mean,
        squares,
        slowest,
        slowest + ExtremeSpread.of(speeds),
        cell.shots().stream().mapToDouble(s -> s.gatesUMps() * s.gatesUMps()).average().orElse(0),
        cell.setAside().size());
  }

  /** NaN of fewer than two shots. */
  public double sdMps() {
    return n < 2 ? Double.NaN : Math.sqrt(sumSquares / (n - 1));
  }

  public boolean isEmpty() {
    return n == 0;
  }
}
