package castwell.analysis.season;

/**
 * How much each bow's shots scatter: s2 = (d s0^2 + sum of squares) / (d + sum (n - 1)), over all
 * sessions, with s0 and d as the prior has them.
 */
final class ShotSpread {
  /** Variance of a log speed, by bow. */
  final double[] variance;

  final double[] degrees;

  private ShotSpread(double[] variance, double[] degrees) {
    this.variance = variance;
    this.degrees = degrees;
  }

  static ShotSpread of(Layout layout, Priors priors) {
    int bows = layout.bows.size();
    double[] squares = new double[bows];
    double[] degrees = new double[bows];
    for (int c = 0; c < layout.cells.length; c++) {
      squares[layout.bow[c]] += layout.cells[c].squares();
      degrees[layout.bow[c]] += layout.cells[c].shots() - 1;
    }
    double prior = priors.shotDegrees() * priors.shotSd() * priors.shotSd();
    for (int b = 0; b < bows; b++) {
      degrees[b] += priors.shotDegrees();
      squares[b] = (prior + squares[b]) / degrees[b];
    }
    return new ShotSpread(squares, degrees);
  }

  /** The same, but one bow's variance is so many times as large. */
  ShotSpread scaled(int bow, double factor) {
    double[] other = variance.clone();
    other[bow] *= factor;
    return new ShotSpread(other, degrees);
  }
}
