package castwell.analysis.bow;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellSums;
import castwell.analysis.cell.SetUp;
import castwell.analysis.statistic.StraightLine;
import castwell.analysis.uncertainty.Quantity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A bow state's cells as the fits take them in: by their sums, which is all that least squares use
 * of the shots.
 *
 * @param name tells the state's fit from others'
 */
public record BowSums(String name, List<CellSums> cells) {

  public BowSums {
    cells = List.copyOf(cells);
  }

  public static BowSums of(String name, List<Cell> cells) {
    return new BowSums(name, cells.stream().map(CellSums::of).toList());
  }

  /** How many shots count. */
  public int shots() {
    return cells.stream().mapToInt(CellSums::n).sum();
  }

  /** The different masses of which a shot counts, the lightest first. */
  public double[] massesKg() {
    return cells.stream()
        .filter(cell -> !cell.isEmpty())
        .mapToDouble(CellSums::massKg)
        .distinct()
        .sorted()
        .toArray();
  }

  /** The curve alone. */
  public Optional<VirtualMassFit> fit() {
    return VirtualMassFit.of(Repeats.of(cells));
  }

  /** The trade's straight line of speed, in m/s, on mass, in kg. */
  public Optional<StraightLine> line() {
    Repeats repeats = Repeats.of(cells);
    return StraightLine.fit(
        repeats.massKg(), repeats.count(), repeats.meanMps(), repeats.withinSumSquares());
  }

  /**
   * The bow by that curve. What a set-up makes all speeds wrong by makes the energy wrong by twice
   * as much and leaves the virtual mass: common to it, by each set-up's share of the shots.
   */
  public Optional<VirtualMass> virtualMass() {
    return fit().map(fit -> withCommon(fit.quantities(name)));
  }

  private VirtualMass withCommon(VirtualMass own) {
    Map<SetUp, Integer> shots = new LinkedHashMap<>();
    cells.forEach(cell -> shots.merge(cell.setUp(), cell.n(), Integer::sum));
    int all = shots();
    Quantity energy = own.energyJ();
    for (var setUp : shots.entrySet()) {
      double share = (double) setUp.getValue() / all;
      double u = 2 * setUp.getKey().relativeU() * share * energy.value();
      energy = energy.plus(Quantity.of(0, u, setUp.getKey().source()));
    }
    return own.withEnergy(energy);
  }
}
