package castwell.analysis.outlier;

import java.util.Arrays;
import java.util.Comparator;

/**
 * One cell's evidence for each standard deviation that its bow's shots may have, summed over every
 * set of shots that may be strays together: fewer than half of a cell of up to eight, three of a
 * larger one. Of a cell of more than twelve only the twelve farthest from its median are suspects,
 * six of them at once.
 */
final class CellSubsets {
  private static final int SMALL = 8;
  private static final int MOST_OF_MEDIUM = 3;
  private static final int MOST_SUSPECTS = 12;
  private static final int MOST_OF_LARGE = 6;

  /** The log of the cell's likelihood, by standard deviation. */
  final double[] logEvidence = new double[StrayPrior.SDS];

  /** By shot and standard deviation, how likely the shot is a stray. */
  final double[][] chance;

  private final double[] values;
  private final int[] suspects;
  private final double[][] likelihood;
  private final int[] sets;
  private int found;

  /**
   * @param kept which shots are no strays, whatever they look like
   */
  CellSubsets(double[] values, boolean[] kept) {
    this.values = values;
    suspects = suspects(values, kept);
    int most = most(values.length);
    int count = 0;
    for (int set = 0; set < 1 << suspects.length; set++) {
      count += Integer.bitCount(set) <= most ? 1 : 0;
    }
    sets = new int[count];
    likelihood = new double[count][];
    for (int set = 0; set < 1 << suspects.length; set++) {
      if (Integer.bitCount(set) <= most) {
        sets[found] = set;
        likelihood[found++] = logLikelihood(set);
      }
    }
    chance = new double[values.length][StrayPrior.SDS];
    sum();
  }

  private static int most(int shots) {
    int fewerThanHalf = (shots - 1) / 2;
    if (shots <= SMALL) {
      return fewerThanHalf;
    }
    return Math.min(shots <= MOST_SUSPECTS ? MOST_OF_MEDIUM : MOST_OF_LARGE, fewerThanHalf);
  }

  private static int[] suspects(double[] values, boolean[] kept) {
    Integer[] order = new Integer[values.length];
    Arrays.setAll(order, i -> i);
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double median = (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    Arrays.sort(order, Comparator.comparingDouble(i -> -Math.abs(values[i] - median)));
    int[] suspects = new int[MOST_SUSPECTS];
    int count = 0;
    for (int i : order) {
      if (!kept[i] && count < MOST_SUSPECTS) {
        suspects[count++] = i;
      }
    }
    return Arrays.copyOf(suspects, count);
  }

  private double[] logLikelihood(int set) {
    boolean[] out = new boolean[values.length];
    for (int s = 0; s < suspects.length; s++) {
      out[suspects[s]] = (set >> s & 1) == 1;
    }
    int good = values.length - Integer.bitCount(set);
    double mean = 0;
    for (int i = 0; i < out.length; i++) {
      mean += out[i] ? 0 : values[i] / good;
    }
    double squares = 0;
    double log =
        StrayPrior.logShares(good, out.length - good)
            - Math.log(good) / 2
            - (good - 1) * Math.log(2 * Math.PI) / 2;
    for (int i = 0; i < out.length; i++) {
      double distance = values[i] - mean;
      if (out[i]) {
        log += StrayPrior.logDistance(distance);
      } else {
        squares += distance * distance;
      }
    }
    double[] bySd = new double[StrayPrior.SDS];
    for (int s = 0; s < bySd.length; s++) {
      bySd[s] = log + StrayPrior.logLikelihood(good - 1, squares, s);
    }
    return bySd;
  }

  private void sum() {
    for (int s = 0; s < StrayPrior.SDS; s++) {
      double most = Double.NEGATIVE_INFINITY;
      for (double[] one : likelihood) {
        most = Math.max(most, one[s]);
      }
      double total = 0;
      for (int set = 0; set < sets.length; set++) {
        double share = Math.exp(likelihood[set][s] - most);
        total += share;
        for (int bits = sets[set]; bits != 0; bits &= bits - 1) {
          chance[suspects[Integer.numberOfTrailingZeros(bits)]][s] += share;
        }
      }
      for (int suspect : suspects) {
        chance[suspect][s] /= total;
      }
      logEvidence[s] = most + Math.log(total);
    }
  }
}
