package castwell.analysis.compare;

import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * What the day itself did to speeds, by control bows to which nothing was done: the mean of their
 * changes.
 *
 * <p>Where two or more controls disagree beyond their own scatter, the day's effect differs from
 * bow to bow, with the variance tau2 = max(0, s2 - mean u2) by the method of moments. It adds tau2
 * / k to the variance of the mean of k controls, and another tau2 for the reworked bow, which has
 * such an effect of its own; both with k - 1 degrees of freedom.
 *
 * <p>A lone control can't disagree with another, and two or three may agree by chance. Where the
 * day does differ from bow to bow, such a difference passes for the rework's effect more often than
 * p says; every further control makes that rarer.
 *
 * @param changes the controls' changes; empty when nothing controls for the day
 * @param betweenBows tau, in the changes' unit
 */
public record Control(List<Quantity> changes, double betweenBows) {
  private static final double MANY = 1e6;

  public static Control of(List<Quantity> changes) {
    return new Control(List.copyOf(changes), betweenBows(changes));
  }

  private static double betweenBows(List<Quantity> changes) {
    if (changes.size() < 2) {
      return 0;
    }
    double sd = StandardDeviation.of(changes.stream().mapToDouble(Quantity::value).toArray());
    double own =
        Mean.of(
            changes.stream()
                .mapToDouble(c -> Math.pow(c.standardUncertainty(Kind.OWN), 2))
                .toArray());
    return Math.sqrt(Math.max(0, sd * sd - own));
  }

  /** The mean of the controls' changes; empty without any control. */
  public Optional<Quantity> meanChange() {
    return changes.stream().reduce(Quantity::plus).map(sum -> sum.times(1.0 / changes.size()));
  }

  /** A change less what the day did to the controls: the difference in differences. */
  public Quantity takenFrom(Quantity change) {
    int k = changes.size();
    return meanChange().map(day -> change.minus(day).plus(disagreement(k))).orElse(change);
  }

  private Quantity disagreement(int k) {
    Source source = new Source("days between bows", Kind.OWN, Math.max(1, k - 1));
    return Quantity.of(0, betweenBows * Math.sqrt(1 + 1.0 / k), source);
  }

  /**
   * The p value of that all controls changed alike: by Welch's test of many means (Biometrika 38
   * (1951) 330; from memory; R's oneway.test), which for well known changes is Cochran's Q. 1 for
   * fewer than two, and where one has no uncertainty of its own.
   */
  public double agreementP() {
    int k = changes.size();
    if (k < 2 || changes.stream().anyMatch(c -> !(c.standardUncertainty(Kind.OWN) > 0))) {
      return 1;
    }
    double[] weight = new double[k];
    double all = 0;
    double centre = 0;
    for (int i = 0; i < k; i++) {
      weight[i] = 1 / Math.pow(changes.get(i).standardUncertainty(Kind.OWN), 2);
      all += weight[i];
      centre += weight[i] * changes.get(i).value();
    }
    centre /= all;
    double q = 0;
    double doubt = 0;
    for (int i = 0; i < k; i++) {
      q += weight[i] * Math.pow(changes.get(i).value() - centre, 2);
      double degrees = changes.get(i).only(Kind.OWN).effectiveDegreesOfFreedom();
      doubt += Math.pow(1 - weight[i] / all, 2) / Math.min(degrees, MANY);
    }
    double f = q / (k - 1) / (1 + 2.0 * (k - 2) / (k * k - 1.0) * doubt);
    return 1 - new FDistribution(k - 1.0, (k * k - 1) / (3 * doubt)).cumulativeProbability(f);
  }
}
