package castwell.analysis.bow;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.SetUp;
import castwell.analysis.uncertainty.Quantity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A bow state's cells as the fits take them in: shot by shot.
 *
 * @param name tells the state's fit from others'
 */
public record BowCells(String name, List<Cell> cells) {

  public BowCells {
    cells = List.copyOf(cells);
  }

  /** Of each shot that counts. */
  public double[] massesKg() {
    return cells.stream()
        .flatMapToDouble(cell -> cell.shots().stream().mapToDouble(shot -> cell.massKg()))
        .toArray();
  }

  /** Of each shot that counts, in the same order. */
  public double[] speedsMps() {
    return cells.stream()
        .flatMapToDouble(cell -> cell.shots().stream().mapToDouble(shot -> shot.speedMps()))
        .toArray();
  }

  /** The curve alone. */
  public Optional<VirtualMassFit> fit() {
    return VirtualMassFit.of(massesKg(), speedsMps());
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
    cells.forEach(cell -> shots.merge(cell.setUp(), cell.shots().size(), Integer::sum));
    int all = shots.values().stream().mapToInt(n -> n).sum();
    Quantity energy = own.energyJ();
    for (var setUp : shots.entrySet()) {
      double share = (double) setUp.getValue() / all;
      double u = 2 * setUp.getKey().relativeU() * share * energy.value();
      energy = energy.plus(Quantity.of(0, u, setUp.getKey().source()));
    }
    return own.withEnergy(energy);
  }
}
