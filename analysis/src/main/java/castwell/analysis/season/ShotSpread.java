package castwell.analysis.season;

/**
 * How much each bow's shots scatter: s2 = (d s0^2 + sum of squares) / (d + sum (n - 1)), over all
 * sessions, with s0 and d as the prior has them.
 */
final class ShotSpread {
  private static final double MOST_DEGREES = 1e6;

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

  /**
   * Degrees of freedom of a variance by Satterthwaite (Biometrics Bull. 2 (1946) 110), for the
   * shots' spread alone; what D, W and A leave open is in the mixture.
   *
   * @param bySpread how it changes with the log of the variance of each bow's shots
   */
  double degrees(double ofAnswer, double... bySpread) {
    double sum = 0;
    for (int b = 0; b < bySpread.length; b++) {
      sum += bySpread[b] * bySpread[b] / degrees[b];
    }
    return Math.min(MOST_DEGREES, ofAnswer * ofAnswer / sum);
  }

  /** The same, but one bow's variance is so many times as large. */
  ShotSpread scaled(int bow, double factor) {
    double[] other = variance.clone();
    other[bow] *= factor;
    return new ShotSpread(other, degrees);
  }
}
