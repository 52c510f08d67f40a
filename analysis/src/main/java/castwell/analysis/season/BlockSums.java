package castwell.analysis.season;

/**
 * All that is needed of the cells, once, whatever D, W and A are: weights n / s2 and weighted sums
 * of what the curve leaves over.
 */
final class BlockSums {
  /** By cell. */
  final double[] weight;

  /** Sums of weights and of weighted residuals, by block and by pair. */
  final double[] blockWeight;

  final double[] blockSum;
  final double[] pairWeight;
  final double[] pairSum;
  final double squares;
  final double logWeights;

  /**
   * @param shift what is added to each cell's mean log speed
   */
  BlockSums(Layout layout, double[] variance, Tangent tangent, double[] shift) {
    int cells = layout.cells.length;
    weight = new double[cells];
    blockWeight = new double[layout.blockStart.length - 1];
    blockSum = new double[blockWeight.length];
    pairWeight = new double[layout.pairs()];
    pairSum = new double[pairWeight.length];
    double sum = 0;
    double logs = 0;
    for (int k = 0; k < blockWeight.length; k++) {
      for (int c = layout.blockStart[k]; c < layout.blockStart[k + 1]; c++) {
        int i = layout.pair[c];
        double w = layout.cells[c].shots() / variance[layout.bow[c]];
        double r = layout.cells[c].meanLog() + shift[c] - tangent.y[i];
        weight[c] = w;
        blockWeight[k] += w;
        blockSum[k] += w * r;
        pairWeight[i] += w;
        pairSum[i] += w * r;
        sum += w * r * r;
        logs += Math.log(w);
      }
    }
    squares = sum;
    logWeights = logs;
  }
}
