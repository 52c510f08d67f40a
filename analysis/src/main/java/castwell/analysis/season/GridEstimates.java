package castwell.analysis.season;

import castwell.analysis.numeric.Contrast;
import java.util.Arrays;

/** What the equations give at each place of a grid over D, W and A. */
final class GridEstimates {
  /** The states' alphas, their e's, then what conditions do. */
  final double[][] beta;

  /** Of those, row by row. */
  final double[][] covariance;

  /** The posterior's, but for a constant. */
  final double[] logDensity;

  /** By bow, how the covariance at the mode changes with the log of the variance of its shots. */
  private final double[][] bySpread;

  GridEstimates(Posterior posterior, double[][] places, double[] mode) {
    beta = new double[places.length][];
    covariance = new double[places.length][];
    logDensity = new double[places.length];
    for (int g = 0; g < places.length; g++) {
      Solution solution = posterior.at(places[g]);
      logDensity[g] = solution.logLikelihood + posterior.priors.logDensity(places[g]);
      beta[g] = solution.step();
      for (int p = 0; p < posterior.tangent.beta.length; p++) {
        beta[g][p] += posterior.tangent.beta[p];
      }
      covariance[g] = solution.covariance();
    }
    bySpread = posterior.bySpread(there -> there.at(mode).covariance());
  }

  /** By bow, how the contrast's variance changes with the log of the variance of its shots. */
  double[] bySpread(Contrast contrast) {
    return Arrays.stream(bySpread)
        .mapToDouble(bow -> contrast.variance(bow, beta[0].length))
        .toArray();
  }
}
