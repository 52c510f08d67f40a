package castwell.analysis.season;

import castwell.analysis.numeric.UpperFactor;
import java.util.Arrays;

/** The equations with A in them, solved. */
final class Solution {
  final Information information;
  private final UpperFactor factor;
  private final double[] z;
  private final int fixedFrom;

  /**
   * The restricted log likelihood (Patterson and Thompson, Biometrika 58 (1971) 545; from memory),
   * but for a constant.
   */
  final double logLikelihood;

  Solution(Layout layout, Tangent tangent, Priors priors, Information information, double a) {
    this.information = information;
    int errors = layout.arrows.errorUKg.length;
    int states = layout.stateCount();
    fixedFrom = errors + layout.effects;
    double[][] matrix = new double[information.matrix.length][];
    for (int i = 0; i < matrix.length; i++) {
      matrix[i] = information.matrix[i].clone();
    }
    double[] right = information.right.clone();
    double logs = 0;
    for (int i = 0; i < errors; i++) {
      double u = layout.arrows.errorUKg[i];
      matrix[i][i] += 1 / (u * u);
      logs += 2 * Math.log(u);
    }
    double[] variance = effectVariances(layout, tangent, a * a);
    for (int i = 0; i < layout.effects; i++) {
      matrix[errors + i][errors + i] += 1 / variance[i];
      logs += Math.log(variance[i]);
    }
    double weight = 1 / (priors.eSd() * priors.eSd());
    double away = 0;
    for (int s = 0; s < states; s++) {
      int at = fixedFrom + states + s;
      double difference = priors.eMean() - tangent.beta[states + s];
      matrix[at][at] += weight;
      right[at] += weight * difference;
      away += weight * difference * difference;
    }
    for (int v = 0; v < layout.covariates.size(); v++) {
      int at = fixedFrom + 2 * states + v;
      matrix[at][at] += 1 / Math.pow(layout.covariates.get(v).effectSd(), 2);
    }
    factor = new UpperFactor(matrix);
    z = factor.forward(right);
    double explained = 0;
    for (double part : z) {
      explained += part * part;
    }
    logLikelihood =
        -(information.logDeterminant
                + logs
                + factor.logDeterminant()
                + information.squares
                + away
                - explained)
            / 2;
  }

  private static double[] effectVariances(Layout layout, Tangent tangent, double a2) {
    double[] variance = new double[layout.effects];
    Arrays.fill(variance, a2);
    for (int i = 0; i < layout.pairs(); i++) {
      double u = tangent.byMass[i] * layout.arrows.aloneUKg[i];
      variance[layout.pairEffect[i]] += u * u;
    }
    return variance;
  }

  /**
   * How far the estimates of (alpha, e) lie from where the curve was made straight, then what the
   * conditions do.
   */
  double[] step() {
    return factor.backward(z, fixedFrom);
  }

  /** The covariance of those, row by row. */
  double[] covariance() {
    return factor.inverseBlock(fixedFrom);
  }

  /** All unknowns. */
  double[] unknowns() {
    return factor.backward(z, 0);
  }

  /** The covariance of all unknowns, row by row. */
  double[] wholeCovariance() {
    return factor.inverseBlock(0);
  }
}
