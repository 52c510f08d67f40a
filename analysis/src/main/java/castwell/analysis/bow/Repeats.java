package castwell.analysis.bow;

import castwell.analysis.cell.CellSums;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Shots gathered by arrow mass, which is all that a fit of speed on mass can use of them.
 *
 * @param massKg the different masses, the lightest first
 * @param count the number of shots with each mass
 * @param meanMps the mean speed of each mass
 * @param withinSumSquares the sum of squared deviations from those means, which no curve can
 *     explain
 */
record Repeats(double[] massKg, int[] count, double[] meanMps, double withinSumSquares) {

  static Repeats of(double[] massKg, double[] speedMps) {
    if (massKg.length != speedMps.length) {
      throw new IllegalArgumentException(
          "%d masses can't go with %d speeds".formatted(massKg.length, speedMps.length));
    }
    Map<Double, double[]> sums = new TreeMap<>();
    for (int i = 0; i < massKg.length; i++) {
      double[] sum = sums.computeIfAbsent(massKg[i], m -> new double[2]);
      sum[0]++;
      sum[1] += speedMps[i];
    }
    double within = 0;
    for (int i = 0; i < massKg.length; i++) {
      double[] sum = sums.get(massKg[i]);
      double deviation = speedMps[i] - sum[1] / sum[0];
      within += deviation * deviation;
    }
    return new Repeats(
        sums.keySet().stream().mapToDouble(m -> m).toArray(),
        sums.values().stream().mapToInt(sum -> (int) sum[0]).toArray(),
        sums.values().stream().mapToDouble(sum -> sum[1] / sum[0]).toArray(),
        within);
  }

  /**
   * The same from cells; a difference between two cells of one mass counts as scatter within it.
   */
  static Repeats of(List<CellSums> cells) {
    Map<Double, double[]> sums = new TreeMap<>();
    for (CellSums cell : cells) {
      if (!cell.isEmpty()) {
        double[] sum = sums.computeIfAbsent(cell.massKg(), m -> new double[2]);
        sum[0] += cell.n();
        sum[1] += cell.n() * cell.meanMps();
      }
    }
    double within = 0;
    for (CellSums cell : cells) {
      if (!cell.isEmpty()) {
        double[] sum = sums.get(cell.massKg());
        double between = cell.meanMps() - sum[1] / sum[0];
        within += cell.sumSquares() + cell.n() * between * between;
      }
    }
    return new Repeats(
        sums.keySet().stream().mapToDouble(m -> m).toArray(),
        sums.values().stream().mapToInt(sum -> (int) sum[0]).toArray(),
        sums.values().stream().mapToDouble(sum -> sum[1] / sum[0]).toArray(),
        within);
  }

  int masses() {
    return massKg.length;
  }

  int shots() {
    int shots = 0;
    for (int n : count) {
      shots += n;
    }
    return shots;
  }
}
