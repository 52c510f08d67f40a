package castwell.analysis.season;

/**
 * The curve of each bow state, y = alpha - ln(1 + e x) / 2, and its derivatives at one place of
 * (alpha, e). With x = m / mean - 1 and e = mean / (mean + K) it is v = sqrt(2 E / (m + K))
 * (Klopsteg, Am. J. Phys. 11 (1943) 175), and nearly linear in e.
 */
final class Tangent {
  /** How many unknowns a pair, or a condition, depends on at most. */
  static final int DEPENDS = 4;

  private static final double LEAST = 0.05;

  /** The alphas, then the e's, by state. */
  final double[] beta;

  /** By pair: the log speed, its derivative by e, and by the arrow's mass in kg, turned over. */
  final double[] y;

  final double[] byE;
  final double[] byMass;

  /**
   * By pair, then by condition: the {@link #DEPENDS} unknowns that it depends on, and the
   * derivatives. The unknowns are the shared errors of weighing, the arrows' effects, the states'
   * alpha and e, then what each condition does.
   */
  final int[] at;

  final double[] by;
  final int unknowns;

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
    int rows = pairs + layout.covariates.size();
    at = new int[DEPENDS * rows];
    by = new double[DEPENDS * rows];
    int errors = layout.arrows.errorUKg.length;
    int alphas = errors + layout.effects;
    for (int i = 0; i < pairs; i++) {
      int error = layout.arrows.errorOfPair[i];
      set(DEPENDS * i, alphas + layout.pairState[i], 1);
      set(DEPENDS * i + 1, alphas + states + layout.pairState[i], byE[i]);
      set(DEPENDS * i + 2, errors + layout.pairEffect[i], 1);
      set(DEPENDS * i + 3, Math.max(error, 0), error < 0 ? 0 : -byMass[i]);
    }
    unknowns = alphas + 2 * states + layout.covariates.size();
    for (int i = pairs; i < rows; i++) {
      set(DEPENDS * i, unknowns - rows + i, 1);
    }
  }

  private void set(int place, int unknown, double derivative) {
    at[place] = unknown;
    by[place] = derivative;
  }

  /**
   * 1 + e x, (m + K) over that at the mean mass; where an e above 1, a K below 0, would have it
   * near 0 or below, the curve ends.
   */
  static double share(double e, double x) {
    return Math.max(1 + e * x, LEAST);
  }
}
