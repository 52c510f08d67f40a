package castwell.analysis.cell;

import castwell.analysis.speed.KineticEnergy;
import castwell.analysis.speed.Momentum;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;

/**
 * What one cell's shots say, in SI units.
 *
 * <p>The mean's own uncertainty is s / sqrt(n) with n - 1 degrees of freedom (JCGM 100:2008, 4.2),
 * so that its interval is Student's; what the gates add to each shot is within s already. A lone
 * shot says nothing about spread: its s is NaN and its uncertainty has no bound. The set-up's
 * common part is a source of its own.
 *
 * @param extremeSpreadMps the fastest less the slowest speed
 * @param gatesSdMps the root mean square of the uncertainty that the gates alone add to each shot
 */
public record CellSummary(
    CellSums cell,
    int n,
    Quantity meanMps,
    double sdMps,
    double extremeSpreadMps,
    double gatesSdMps,
    Quantity kineticEnergyJ,
    Quantity momentumNs) {

  /**
   * @param cell a cell with at least one shot that counts
   * @throws IllegalArgumentException for a cell without any
   */
  public static CellSummary of(Cell cell) {
    return of(CellSums.of(cell));
  }

  /**
   * @param cell a cell with at least one shot that counts
   * @throws IllegalArgumentException for a cell without any
   */
  public static CellSummary of(CellSums cell) {
    if (cell.isEmpty()) {
      throw new IllegalArgumentException("a cell's summary needs a shot that counts");
    }
    Quantity mean = cell.atBow().withCommon(cell.setUp().withCommon(own(cell)));
    Quantity mass = Quantity.exact(cell.massKg());
    return new CellSummary(
        cell,
        cell.n(),
        mean,
        cell.sdMps(),
        cell.fastestMps() - cell.slowestMps(),
        Math.sqrt(cell.gatesMeanSquare()),
        KineticEnergy.of(mass, mean),
        Momentum.of(mass, mean));
  }

  /**
   * The mean with the uncertainty that repeats tell, without the one that the set-up's shots share.
   */
  public Quantity ownMeanMps() {
    return meanMps.only(Kind.OWN);
  }

  private static Quantity own(CellSums cell) {
    Source source = new Source("repeats of " + cell.name(), Kind.OWN, Math.max(1, cell.n() - 1));
    double u = cell.n() == 1 ? Double.POSITIVE_INFINITY : cell.sdMps() / Math.sqrt(cell.n());
    return Quantity.of(cell.meanMps(), u, source);
  }
}
