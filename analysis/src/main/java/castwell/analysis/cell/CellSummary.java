package castwell.analysis.cell;

import castwell.analysis.speed.KineticEnergy;
import castwell.analysis.speed.Momentum;
import castwell.analysis.statistic.ExtremeSpread;
import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
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
 * @param extremeSpreadMps fastest less slowest
 * @param gatesSdMps root mean square of what the gates alone add to each shot
 */
public record CellSummary(
    Cell cell,
    int n,
    Quantity meanMps,
    double sdMps,
    double extremeSpreadMps,
    double gatesSdMps,
    Quantity kineticEnergyJ,
    Quantity momentumNs) {

  /**
   * @param cell with a shot at least
   */
  public static CellSummary of(Cell cell) {
    double[] speeds = cell.speedsMps();
    if (speeds.length == 0) {
      throw new IllegalArgumentException("a cell's summary needs a shot that counts");
    }
    double sd = StandardDeviation.of(speeds);
    Quantity mean = cell.setUp().withCommon(own(cell.name(), speeds, sd));
    Quantity mass = Quantity.exact(cell.massKg());
    return new CellSummary(
        cell,
        speeds.length,
        mean,
        sd,
        ExtremeSpread.of(speeds),
        gatesSd(cell),
        KineticEnergy.of(mass, mean),
        Momentum.of(mass, mean));
  }

  /** The mean with what repeats tell of it, without what the set-up has in common. */
  public Quantity ownMeanMps() {
    return meanMps.only(Kind.OWN);
  }

  private static Quantity own(CellName name, double[] speeds, double sd) {
    Source source = new Source("repeats of " + name, Kind.OWN, Math.max(1, speeds.length - 1));
    double u = speeds.length == 1 ? Double.POSITIVE_INFINITY : sd / Math.sqrt(speeds.length);
    return Quantity.of(Mean.of(speeds), u, source);
  }

  private static double gatesSd(Cell cell) {
    return Math.sqrt(
        cell.shots().stream().mapToDouble(s -> s.gatesUMps() * s.gatesUMps()).average().orElse(0));
  }
}
