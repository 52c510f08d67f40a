package castwell.analysis.coverage;

import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.VirtualMass;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellShot;
import castwell.analysis.cell.CellSummary;
import castwell.analysis.cell.CellSums;
import castwell.analysis.cell.SetUp;
import castwell.analysis.compare.ArrowChange;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A bow, shot before and after a rework: as the model says, with normal scatter. */
final class SimulatedSessions {
  private static final double[] MASSES_GR = {350, 500, 700};
  private static final int SHOTS = 5;
  private static final double SD_MPS = 0.9 * Units.METRES_PER_FOOT;
  private static final double COVERAGE = 0.95;

  private static final VirtualMass BEFORE = bow(30, 150);
  private static final VirtualMass AFTER = bow(31, 140);

  private final Random random;

  SimulatedSessions(Random random) {
    this.random = random;
  }

  private static VirtualMass bow(double energyFtlbf, double virtualGr) {
    return new VirtualMass(
        Quantity.exact(energyFtlbf * Units.JOULES_PER_FOOT_POUND),
        Quantity.exact(virtualGr * Units.KILOGRAMS_PER_GRAIN));
  }

  private static double speed(VirtualMass bow, double massKg) {
    return bow.speedMps(Quantity.exact(massKg)).value();
  }

  private List<Cell> shoot(String name, String day, VirtualMass bow) {
    List<Cell> cells = new ArrayList<>();
    for (double grains : MASSES_GR) {
      double massKg = grains * Units.KILOGRAMS_PER_GRAIN;
      List<CellShot> shots = new ArrayList<>();
      for (int i = 0; i < SHOTS; i++) {
        double mps = speed(bow, massKg) + SD_MPS * random.nextGaussian();
        shots.add(new CellShot(name + day + grains + i, i, mps, 0, false));
      }
      CellName cell = new CellName(name, "as made", grains + " gr", day);
      cells.add(new Cell(cell, massKg, new SetUp("gates", 0), shots, List.of()));
    }
    return cells;
  }

  Tally tally() {
    Tally tally = new Tally();
    List<Cell> before = shoot("bow", "first", BEFORE);
    one(tally, before);
    fitted(tally, before);
    change(tally, before);
    return tally;
  }

  private static void one(Tally tally, List<Cell> cells) {
    Cell cell = cells.get(1);
    Quantity mean = CellSummary.of(cell).meanMps();
    tally.add("mean of a cell", mean.interval(COVERAGE), speed(BEFORE, cell.massKg()));
  }

  private static void fitted(Tally tally, List<Cell> cells) {
    VirtualMass fit = BowSums.of("bow", cells).virtualMass().orElseThrow();
    tally.add("energy E", fit.energyJ().interval(COVERAGE), BEFORE.energyJ().value());
    tally.add(
        "virtual mass K", fit.virtualMassKg().interval(COVERAGE), BEFORE.virtualMassKg().value());
  }

  private void change(Tally tally, List<Cell> before) {
    Cell then = before.get(0);
    Cell now = shoot("bow", "second", AFTER).get(0);
    tally.add(
        "change of one arrow, repeats alone",
        ArrowChange.of(List.of(CellSums.of(then)), List.of(CellSums.of(now)))
            .changeMps()
            .interval(COVERAGE),
        speed(AFTER, then.massKg()) - speed(BEFORE, then.massKg()));
  }
}
