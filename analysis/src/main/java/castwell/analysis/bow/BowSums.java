package castwell.analysis.bow;

import castwell.analysis.air.AtBow;
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
 * A bow state's cells by their sums, which are all that a least-squares fit uses of the shots.
 * Their speeds are those at the bow; where that of one cell isn't known, all are those at the
 * gates, since a curve through both would be bent by the air.
 *
 * @param name the name that tells this state's fit from those of other states
 */
public record BowSums(String name, List<CellSums> cells) {

  public BowSums {
    boolean areAtBow = cells.stream().allMatch(cell -> cell.isEmpty() || cell.atBow().isKnown());
    cells = areAtBow ? List.copyOf(cells) : cells.stream().map(CellSums::atGates).toList();
  }

  /** The same cells with their speeds at the gates. */
  public BowSums atGates() {
    return new BowSums(name, cells.stream().map(CellSums::atGates).toList());
  }

  /** Whether the speeds are those at the bow. */
  public boolean areAtBow() {
    return cells.stream().anyMatch(cell -> cell.atBow().isKnown());
  }

  public static BowSums of(String name, List<Cell> cells) {
    return new BowSums(name, cells.stream().map(CellSums::of).toList());
  }

  /** How many shots count. */
  public int shots() {
    return cells.stream().mapToInt(CellSums::n).sum();
  }

  /** The different arrow masses with at least one shot that counts, the lightest first. */
  public double[] massesKg() {
    return cells.stream()
        .filter(cell -> !cell.isEmpty())
        .mapToDouble(CellSums::massKg)
        .distinct()
        .sorted()
        .toArray();
  }

  /** The virtual-mass curve fitted to these cells, without what the set-ups add. */
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
   * The bow by that curve, with what the set-ups add. An error of a set-up makes all its speeds
   * wrong by the same share; the energy is then wrong by twice that share, and the virtual mass
   * isn't wrong at all. Each set-up therefore adds a common uncertainty to the energy, weighted by
   * its share of the shots.
   */
  public Optional<VirtualMass> virtualMass() {
    return fit().map(fit -> withDrag(withCommon(fit.quantities(name))));
  }

  /**
   * The drag coefficient's error makes light arrows' speeds more wrong than heavy ones', and so the
   * virtual mass too: by how much, the fit itself tells when all speeds are taken to the bow with a
   * coefficient one standard uncertainty larger or smaller.
   */
  private VirtualMass withDrag(VirtualMass bow) {
    Optional<VirtualMassFit> more = withMoreDrag(1);
    Optional<VirtualMassFit> less = withMoreDrag(-1);
    if (!areAtBow() || more.isEmpty() || less.isEmpty()) {
      return bow;
    }
    double energy = (more.get().energyJ() - less.get().energyJ()) / 2;
    double mass = (more.get().virtualMassKg() - less.get().virtualMassKg()) / 2;
    return new VirtualMass(
        bow.energyJ().plus(AtBow.common(energy)), bow.virtualMassKg().plus(AtBow.common(mass)));
  }

  private Optional<VirtualMassFit> withMoreDrag(double standardUncertainties) {
    return VirtualMassFit.of(
        Repeats.of(cells.stream().map(cell -> cell.withMoreDrag(standardUncertainties)).toList()));
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
