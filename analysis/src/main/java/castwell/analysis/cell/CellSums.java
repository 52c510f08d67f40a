package castwell.analysis.cell;

import castwell.analysis.air.AtBow;
import castwell.analysis.statistic.ExtremeSpread;
import castwell.analysis.statistic.Mean;
import java.util.Arrays;

/**
 * A cell by its sums, which are all that a mean or a fit can use of its shots.
 *
 * @param n the number of shots that count, 0 where none does
 * @param meanMps the mean speed; NaN without any shots
 * @param sumSquares the sum of the squared deviations from the mean, in m2/s2
 * @param slowestMps the slowest speed; NaN without any shots
 * @param fastestMps the fastest speed; NaN without any shots
 * @param gatesMeanSquare the mean square of the uncertainty that the gates alone add to each shot,
 *     in m2/s2
 * @param setAside the number of shots that don't count
 * @param atBow how the speeds were taken from the gates to the bow
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
    int setAside,
    AtBow atBow) {

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
        cell.setAside().size(),
        cell.atBow());
  }

  /** The same sums of the speeds at the gates. */
  public CellSums atGates() {
    return times(1 / atBow.factor(), AtBow.NOT_KNOWN);
  }

  /** The same sums, had the drag coefficient been so many standard uncertainties larger. */
  public CellSums withMoreDrag(double standardUncertainties) {
    return times(Math.exp(standardUncertainties * atBow.relativeU()), atBow);
  }

  private CellSums times(double factor, AtBow speedsAt) {
    return new CellSums(
        name,
        massKg,
        setUp,
        n,
        meanMps * factor,
        sumSquares * factor * factor,
        slowestMps * factor,
        fastestMps * factor,
        gatesMeanSquare * factor * factor,
        setAside,
        speedsAt);
  }

  /** The standard deviation of one shot; NaN of fewer than two. */
  public double sdMps() {
    return n < 2 ? Double.NaN : Math.sqrt(sumSquares / (n - 1));
  }

  /**
   * The mean of the natural logs of the speeds in m/s, as far as mean and spread tell it: shots
   * that scatter by 1 % leave less than 1e-6 out.
   */
  public double meanLog() {
    return Math.log(meanMps) - squaresOfLogs() / n / 2;
  }

  /** The sum of the squares of those logs about their mean, likewise. */
  public double squaresOfLogs() {
    return sumSquares / (meanMps * meanMps);
  }

  public boolean isEmpty() {
    return n == 0;
  }
}
