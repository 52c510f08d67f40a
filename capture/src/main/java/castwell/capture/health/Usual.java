package castwell.capture.health;

import castwell.analysis.outlier.ModifiedZ;
import castwell.analysis.statistic.Median;
import castwell.analysis.statistic.MedianAbsoluteDeviation;
import castwell.capture.store.HeardBeat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * What a figure usually is at a station: robust, so that some odd days don't tell.
 *
 * @param n how many earlier beats it is from
 */
record Usual(double median, double mad, int n) {
  /** Two hours of listening, one beat every ten minutes (common practice, no source). */
  static final int FEWEST = 12;

  static Optional<Usual> of(List<HeardBeat> earlier, Function<HeardBeat, OptionalInt> figure) {
    double[] values =
        earlier.stream().flatMapToInt(b -> figure.apply(b).stream()).asDoubleStream().toArray();
    return values.length < FEWEST
        ? Optional.empty()
        : Optional.of(
            new Usual(Median.of(values), MedianAbsoluteDeviation.of(values), values.length));
  }

  /** How much a figure is off, relatively. */
  double off(double now) {
    return now / median - 1;
  }

  /** An outlier by the modified z-score. */
  boolean isUnlike(double now) {
    return Math.abs(ModifiedZ.score(now, median, mad)) > ModifiedZ.LIMIT;
  }
}
