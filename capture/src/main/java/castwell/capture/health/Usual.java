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
 * What a figure usually is at a station. It is robust, so that a few odd days make no difference.
 *
 * @param n how many earlier beats it was taken from
 */
record Usual(double median, double mad, int n) {
  /**
   * Fewer beats than in two hours of listening, one every ten minutes, don't tell what is usual
   * (common practice, no source).
   */
  static final int FEWEST = 12;

  static Optional<Usual> of(List<HeardBeat> earlier, Function<HeardBeat, OptionalInt> figure) {
    double[] values =
        earlier.stream().flatMapToInt(b -> figure.apply(b).stream()).asDoubleStream().toArray();
    return values.length < FEWEST
        ? Optional.empty()
        : Optional.of(
            new Usual(Median.of(values), MedianAbsoluteDeviation.of(values), values.length));
  }

  /** How far a figure differs from the usual one, relatively. */
  double off(double now) {
    return now / median - 1;
  }

  /** Whether a figure is an outlier by the modified z-score. */
  boolean isUnlike(double now) {
    return Math.abs(ModifiedZ.score(now, median, mad)) > ModifiedZ.LIMIT;
  }
}
