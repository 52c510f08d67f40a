package castwell.analysis.outlier;

import castwell.analysis.statistic.Median;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * One large cell's evidence: every shot is good or a stray by itself, given the mean of the good
 * ones, which is found in turn with the shots' chances and then taken out by Laplace's method. Only
 * the fifth of the shots that lies farthest from the median, and twelve at least, are suspects: the
 * others are but summed, so that thousands of shots take some milliseconds.
 */
final class CellMixture {
  private static final int FEWEST_SUSPECTS = 12;
  private static final int ONE_OF = 5;
  private static final int TURNS = 8;

  private final double[] values;
  private final double median;
  private final int[] suspects;

  /** Of the distances from the median of all shots that are no suspects. */
  private int sure;

  private double sum;
  private double squares;

  /**
   * @param kept which shots are no strays, whatever they look like
   */
  CellMixture(double[] values, boolean[] kept) {
    this.values = values;
    this.median = Median.of(values);
    double[] distances = Arrays.stream(values).map(value -> Math.abs(value - median)).toArray();
    double[] sorted = distances.clone();
    Arrays.sort(sorted);
    int most = Math.max(FEWEST_SUSPECTS, values.length / ONE_OF);
    double near = sorted[values.length - 1 - most];
    suspects =
        IntStream.range(0, values.length).filter(i -> !kept[i] && distances[i] > near).toArray();
    for (int i = 0, next = 0; i < values.length; i++) {
      if (next < suspects.length && suspects[next] == i) {
        next++;
      } else {
        sure++;
        sum += values[i] - median;
        squares += (values[i] - median) * (values[i] - median);
      }
    }
  }

  CellChances chances() {
    double[] logEvidence = new double[StrayPrior.SDS];
    double[][] chance = new double[values.length][StrayPrior.SDS];
    for (int s = 0; s < StrayPrior.SDS; s++) {
      double[] strays = new double[suspects.length];
      Arrays.fill(strays, 1);
      double good = sure;
      double mean = 0;
      for (int turn = 0; turn < TURNS; turn++) {
        judge(strays, mean, good, s);
        good = sure;
        mean = sum;
        for (int i = 0; i < strays.length; i++) {
          good += 1 - strays[i];
          mean += (1 - strays[i]) * (values[suspects[i]] - median);
        }
        mean /= good;
      }
      for (int i = 0; i < strays.length; i++) {
        chance[suspects[i]][s] = strays[i];
      }
      logEvidence[s] = logEvidence(mean, good, s);
    }
    return new CellChances(logEvidence, chance);
  }

  /** Judges each suspect by the mean of the others. */
  private void judge(double[] strays, double mean, double good, int step) {
    for (int i = 0; i < strays.length; i++) {
      double value = values[suspects[i]] - median;
      double others = good - (1 - strays[i]);
      double distance = (value - mean) * good / others;
      strays[i] = 1 / (1 + Math.exp(-StrayPrior.logOdds(distance, 1 / others, step)));
    }
  }

  private double logEvidence(double mean, double good, int step) {
    double log = StrayPrior.logIntegral(good, step) + StrayPrior.logShares(sure, 0);
    log += StrayPrior.logLikelihood(sure, squares - 2 * mean * sum + sure * mean * mean, step);
    for (int suspect : suspects) {
      double distance = values[suspect] - median - mean;
      log += StrayPrior.logShares(1, 0) + StrayPrior.logLikelihood(1, distance * distance, step);
      double odds = StrayPrior.logOdds(distance, 0, step);
      log += Math.max(0, odds) + Math.log1p(Math.exp(-Math.abs(odds)));
    }
    return log;
  }
}
