package castwell.analysis.misfit;

import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.PooledSd;
import castwell.analysis.uncertainty.StudentT;
import java.util.List;

/**
 * What earlier measurements lead one to expect of the next one, x: (x - mean) / scale is Student's
 * t with scale^2 = s^2 (1 + 1/n) + shift^2, where s is the spread pooled over all samples and nu
 * its degrees of freedom (the usual prediction interval; R: predict(lm(x ~ group), interval =
 * "prediction")).
 *
 * @param mean the mean, in the values' unit
 * @param scale the scale, in the values' unit, above 0
 * @param degreesOfFreedom nu, at least 1
 */
public record Expected(double mean, double scale, double degreesOfFreedom) {

  /**
   * Earlier measurements of one thing.
   *
   * @param shift the standard uncertainty of what another day may add to all of them; 0 for today's
   *     own
   */
  public record Sample(double[] values, double shift) {}

  /**
   * @param samples samples with at least one value each
   * @return one expectation for each sample, in their order; none where nothing tells a spread
   */
  public static List<Expected> of(List<Sample> samples) {
    PooledSd pooled = PooledSd.of(samples.stream().map(Sample::values).toList());
    double sd = pooled.sd();
    if (!(sd > 0)) {
      return List.of();
    }
    return samples.stream()
        .map(
            sample ->
                new Expected(
                    Mean.of(sample.values()),
                    Math.hypot(sd * Math.sqrt(1 + 1.0 / sample.values().length), sample.shift()),
                    pooled.degreesOfFreedom()))
        .toList();
  }

  /** How often another measurement would lie at least as far from the mean as x. */
  double pValue(double x) {
    return StudentT.pValue((x - mean) / scale, degreesOfFreedom);
  }

  double logLikelihood(double x) {
    return StudentT.logDensity((x - mean) / scale, degreesOfFreedom) - Math.log(scale);
  }
}
