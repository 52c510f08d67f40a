package castwell.analysis.compare;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellShot;
import castwell.analysis.cell.SetUp;
import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

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
}
