package castwell.analysis.compare;

import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.List;
import java.util.Optional;

/**
 * What the day did, by bows to which nothing was done: the mean of their changes.
 *
 * <p>From two on, what they disagree by beyond their own scatter is a day's effect that differs
 * from bow to bow: tau2 = max(0, s2 - mean u2), by the method of moments. It makes the mean
 * uncertain by tau2 / k, and the reworked bow, which has such an effect of its own, by another
 * tau2; k - 1 degrees of freedom.
 *
 * <p>A lone control can't disagree with another, and two or three may agree by chance. Where the
 * day does differ from bow to bow, such a difference passes for the rework's more often than p
 * says, less so with every control more.
 *
 * @param changes empty when nothing controls for the day
 * @param betweenBows tau, in the changes' unit
 */
public record Control(List<Quantity> changes, double betweenBows) {

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

  /** Empty without any control. */
  public Optional<Quantity> meanChange() {
    return changes.stream().reduce(Quantity::plus).map(sum -> sum.times(1.0 / changes.size()));
  }

  /** A change without what the day did: the difference in differences. */
  public Quantity takenFrom(Quantity change) {
    int k = changes.size();
    return meanChange().map(day -> change.minus(day).plus(disagreement(k))).orElse(change);
  }

  private Quantity disagreement(int k) {
    Source source = new Source("days between bows", Kind.OWN, Math.max(1, k - 1));
    return Quantity.of(0, betweenBows * Math.sqrt(1 + 1.0 / k), source);
  }
}
