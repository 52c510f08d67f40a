package castwell.analysis.season;

/**
 * The curve of each bow state, y = alpha - ln(1 + e x) / 2, and its derivatives at one place of
 * (alpha, e). With x = m / mean - 1 and e = mean / (mean + K) it is v = sqrt(2 E / (m + K))
 * (Klopsteg, Am. J. Phys. 11 (1943) 175), and nearly linear in e.
 */
final class Tangent {
  private static final double LEAST = 0.05;

  /** The alphas, then the e's, by state. */
  final double[] beta;

  /** By pair: the log speed, its derivative by e, and by the arrow's mass in kg, turned over. */
  final double[] y;

  final double[] byE;
  final double[] byMass;

  Tangent(Layout layout, double[] beta) {
    this.beta = beta;
    int states = layout.stateCount();
    int pairs = layout.pairs();
    y = new double[pairs];
    byE = new double[pairs];
    byMass = new double[pairs];
    for (int i = 0; i < pairs; i++) {
      double x = layout.x[i];
      double e = beta[states + layout.pairState[i]];
      double share = share(e, x);
      y[i] = beta[layout.pairState[i]] - Math.log(share) / 2;
      byE[i] = -x / (2 * share);
      byMass[i] = e / (2 * layout.arrows.meanKg * share);
    }
  }

  /**
   * 1 + e x, (m + K) over that at the mean mass; where an e above 1, a K below 0, would have it
   * near 0 or below, the curve ends.
   */
  static double share(double e, double x) {
    return Math.max(1 + e * x, LEAST);
  }
}
