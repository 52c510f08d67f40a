package castwell.analysis.season;

import java.util.Arrays;

/** A sum of some of the states' alphas and e's and conditions' effects, each so many times. */
final class Contrast {
  final int[] at;
  final double[] by;

  private Contrast(int[] at, double[] by) {
    this.at = at;
    this.by = by;
  }

  /** So much of one state's alpha, and so much of its e. */
  static Contrast of(int states, int state, double alpha, double e) {
    return new Contrast(new int[] {state, states + state}, new double[] {alpha, e});
  }

  /** One of the conditions' effects, which stand after the states. */
  static Contrast ofCondition(int states, int condition) {
    return new Contrast(new int[] {2 * states + condition}, new double[] {1});
  }

  Contrast minus(Contrast other) {
    int own = at.length;
    int[] both = Arrays.copyOf(at, own + other.at.length);
    double[] factors = Arrays.copyOf(by, both.length);
    for (int i = own; i < both.length; i++) {
      both[i] = other.at[i - own];
      factors[i] = -other.by[i - own];
    }
    return new Contrast(both, factors);
  }

  double of(double[] beta) {
    double sum = 0;
    for (int i = 0; i < at.length; i++) {
      sum += by[i] * beta[at[i]];
    }
    return sum;
  }

  /** Its variance, by a covariance matrix of so many rows, told row by row. */
  double variance(double[] covariance, int rows) {
    double sum = 0;
    for (int i = 0; i < at.length; i++) {
      for (int j = 0; j < at.length; j++) {
        sum += by[i] * by[j] * covariance[at[i] * rows + at[j]];
      }
    }
    return sum;
  }
}
