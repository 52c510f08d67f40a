package castwell.analysis.bow;

import java.util.Optional;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * The test whether the curve misses the means by more than the repeats scatter: F = (SS lack / (k -
 * 2)) / (SS within / (n - k)), k masses, n shots (Draper and Smith, Applied Regression Analysis,
 * 1.5; from memory).
 *
 * @param f the ratio F, without a unit; infinite when the repeats don't scatter at all but the
 *     curve misses
 * @param pValue the p value; it is small when the curve is not the bow's
 */
public record LackOfFit(double f, int lackDegrees, int withinDegrees, double pValue) {

  /** The test of a fit; empty with fewer than three masses, or without repeats. */
  public static Optional<LackOfFit> of(VirtualMassFit fit) {
    Repeats repeats = fit.repeats();
    double lack = Math.max(0, fit.sumSquares() - repeats.withinSumSquares());
    int lackDegrees = repeats.masses() - 2;
    int withinDegrees = repeats.shots() - repeats.masses();
    if (lackDegrees < 1 || withinDegrees < 1) {
      return Optional.empty();
    }
    double f = lack / lackDegrees / (repeats.withinSumSquares() / withinDegrees);
    double p =
        Double.isFinite(f)
            ? 1 - new FDistribution(lackDegrees, withinDegrees).cumulativeProbability(f)
            : Double.isNaN(f) ? 1 : 0;
    return Optional.of(new LackOfFit(f, lackDegrees, withinDegrees, p));
  }
}
