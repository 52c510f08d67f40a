package castwell.analysis.outlier;

import java.util.stream.IntStream;

/**
 * One small cell's evidence, summed over every set of shots that may be strays together: fewer than
 * half of a cell of up to eight, three of a larger one.
 */
final class CellSubsets {
  private static final int SMALL = 8;
  private static final int MOST_OF_LARGER = 3;

  private final double[] values;
  private final int[] suspects;
  private final int[] sets;
  private final double[][] likelihood;

  /**
   * @param kept which shots are no strays, whatever they look like
   */
  CellSubsets(double[] values, boolean[] kept) {
    this.values = values;
    suspects = IntStream.range(0, values.length).filter(i -> !kept[i]).toArray();
    int fewerThanHalf = (values.length - 1) / 2;
    int most = values.length <= SMALL ? fewerThanHalf : MOST_OF_LARGER;
    sets =
        IntStream.range(0, 1 << suspects.length)
            .filter(set -> Integer.bitCount(set) <= most)
            .toArray();
    likelihood = new double[sets.length][];
    for (int set = 0; set < sets.length; set++) {
      likelihood[set] = logLikelihood(sets[set]);
    }
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
    double log = StrayPrior.logShares(good, out.length - good) - Math.log(good) / 2;
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

  CellChances chances() {
    double[] logEvidence = new double[StrayPrior.SDS];
    double[][] chance = new double[values.length][StrayPrior.SDS];
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
    return new CellChances(logEvidence, chance);
  }
}
