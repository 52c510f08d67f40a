package castwell.analysis.compare;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellShot;
import castwell.analysis.cell.SetUp;
import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Cells made for tests. */
final class Made {
  static final SetUp GATES = new SetUp("gates", 0.005);

  private Made() {}

  static Cell cell(String bow, String arrow, String day, double massKg, double... speedsMps) {
    List<CellShot> shots = new ArrayList<>();
    for (int i = 0; i < speedsMps.length; i++) {
      shots.add(
          new CellShot(
              String.join("-", bow, arrow, day, "" + i), 60.0 * i, speedsMps[i], 0, false));
    }
    return new Cell(new CellName(bow, day, arrow, day), massKg, GATES, shots, List.of());
  }

  /** Values with exactly this mean and standard deviation. */
  static double[] with(double mean, double sd, int n) {
    double[] raw = new double[n];
    for (int i = 0; i < n; i++) {
      raw[i] = i * i;
    }
    double rawMean = Mean.of(raw);
    double rawSd = StandardDeviation.of(raw);
    return Arrays.stream(raw).map(x -> mean + (x - rawMean) / rawSd * sd).toArray();
  }

  /** A bow of E and K shot with three masses. */
  static List<Cell> bow(
      String day, double energyFtlbf, double virtualGr, double sdFps, int shots, Random random) {
    List<Cell> cells = new ArrayList<>();
    for (double grains : new double[] {350, 500, 700}) {
      double massKg = grains * Units.KILOGRAMS_PER_GRAIN;
      double speed =
          Math.sqrt(
              2
                  * energyFtlbf
                  * Units.JOULES_PER_FOOT_POUND
                  / (massKg + virtualGr * Units.KILOGRAMS_PER_GRAIN));
      cells.add(
          cell(
              "bow",
              "arrow " + grains,
              day,
              massKg,
              random
                  .doubles(shots)
                  .map(u -> speed + sdFps * Units.METRES_PER_FOOT * random.nextGaussian())
                  .toArray()));
    }
    return cells;
  }
}
