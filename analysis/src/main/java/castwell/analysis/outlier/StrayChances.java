package castwell.analysis.outlier;

import castwell.analysis.uncertainty.TMixture;
import java.util.ArrayList;
import java.util.List;

/**
 * How likely each shot of a bow is a stray, summed over which shots may be strays together and over
 * how much the bow's good shots may scatter. Each bow is judged by its own spread, over all its
 * cells, so that a pluck is found in a cell of three too. In a cell of one or two none can be told.
 */
public final class StrayChances {
  /** A shot that is a stray more likely than this is set aside. */
  public static final double SET_ASIDE = 0.5;

  /** One that is a stray at least as likely as this, and isn't set aside, is doubted. */
  public static final double DOUBTED = 0.1;

  private StrayChances() {}

  /**
   * The chances, from 0 to 1, cell by cell as given.
   *
   * @param logSpeeds natural logs of the speeds of one bow's shots, by cell
   * @param kept which shots a person brought back, so that they are none
   * @param leastSd what the bow's good shots scatter by at least, relative to their speed: a
   *     display's steps, for one, must not make strays where hardly a shot differs
   */
  public static List<double[]> of(List<double[]> logSpeeds, List<boolean[]> kept, double leastSd) {
    double[] weight = new double[StrayPrior.SDS];
    for (int s = 0; s < weight.length; s++) {
      weight[s] = StrayPrior.logDensity(s, leastSd);
    }
    List<CellChances> cells = new ArrayList<>();
    for (int c = 0; c < logSpeeds.size(); c++) {
      if (logSpeeds.get(c).length > 0) {
        CellChances cell = CellChances.of(logSpeeds.get(c), kept.get(c));
        for (int s = 0; s < weight.length; s++) {
          weight[s] += cell.logEvidence()[s];
        }
        cells.add(cell);
      }
    }
    normalize(weight);
    List<double[]> chances = new ArrayList<>();
    int next = 0;
    for (double[] cell : logSpeeds) {
      chances.add(cell.length > 0 ? averaged(cells.get(next++).chance(), weight) : new double[0]);
    }
    return chances;
  }

  /**
   * The chance of a shot that nothing beside it can judge, by what it should be.
   *
   * @param expected its log speed, as other days have it
   */
  public static double against(TMixture expected, double logSpeed) {
    double stray =
        Math.exp(StrayPrior.logShares(0, 1) + StrayPrior.logDistance(logSpeed - expected.value()));
    double good = Math.exp(StrayPrior.logShares(1, 0)) * expected.density(logSpeed);
    return stray / (stray + good);
  }

  private static void normalize(double[] logs) {
    double most = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      most = Math.max(most, log);
    }
    double sum = 0;
    for (int s = 0; s < logs.length; s++) {
      logs[s] = Math.exp(logs[s] - most);
      sum += logs[s];
    }
    for (int s = 0; s < logs.length; s++) {
      logs[s] /= sum;
    }
  }

  private static double[] averaged(double[][] chance, double[] weight) {
    double[] averaged = new double[chance.length];
    for (int i = 0; i < averaged.length; i++) {
      for (int s = 0; s < weight.length; s++) {
        averaged[i] += weight[s] * chance[i][s];
      }
    }
    return averaged;
  }
}
