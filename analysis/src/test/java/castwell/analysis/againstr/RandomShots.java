package castwell.analysis.againstr;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A bow shot with a few arrows, as the virtual-mass model and a normal scatter make it, in SI
 * units.
 *
 * @param cell of each shot, 0 and on
 */
record RandomShots(int[] cell, double[] massKg, double[] speedMps, double[] x, double[] y) {

  static RandomShots of(Random random) {
    double energyJ = 20 + 50 * random.nextDouble();
    double virtualMassKg = 0.005 + 0.012 * random.nextDouble();
    double sdMps = 0.1 + 0.5 * random.nextDouble();
    int cells = 3 + random.nextInt(4);
    List<double[]> shots = new ArrayList<>();
    for (int cell = 0; cell < cells; cell++) {
      double massKg = 0.018 + (0.008 + 0.002 * random.nextDouble()) * cell;
      double speedMps = Math.sqrt(2 * energyJ / (massKg + virtualMassKg));
      for (int shot = 3 + random.nextInt(6); shot > 0; shot--) {
        shots.add(new double[] {cell, massKg, speedMps + sdMps * random.nextGaussian()});
      }
    }
    int n = 4 + random.nextInt(6);
    return new RandomShots(
        shots.stream().mapToInt(shot -> (int) shot[0]).toArray(),
        column(shots, 1),
        column(shots, 2),
        random.doubles(n).toArray(),
        random.doubles(n).toArray());
  }

  private static double[] column(List<double[]> shots, int column) {
    return shots.stream().mapToDouble(shot -> shot[column]).toArray();
  }

  int cells() {
    return cell[cell.length - 1] + 1;
  }

  double[] speedsMps(int wanted) {
    List<Double> speeds = new ArrayList<>();
    for (int i = 0; i < cell.length; i++) {
      if (cell[i] == wanted) {
        speeds.add(speedMps[i]);
      }
    }
    return speeds.stream().mapToDouble(speed -> speed).toArray();
  }
}
