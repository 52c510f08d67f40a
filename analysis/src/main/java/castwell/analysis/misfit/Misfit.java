package castwell.analysis.misfit;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A shot that fits another bow or arrow clearly better than its tags. Speed and length are taken as
 * independent, each with its own {@link Expected}. The shot's own tags must fit badly: p is below
 * 0.01, where p is the lesser of the two p values, doubled. The other bow or arrow must fit well,
 * with a p of 0.05 or more. The other must also be more than 100 times as likely, times the number
 * of candidates, so that a full rack doesn't find one by chance.
 *
 * @param <K> the type that names a bow with an arrow
 */
public final class Misfit<K> {
  static final double BAD = 0.01;
  static final double GOOD = 0.05;
  static final double CLEARLY = 100;

  /** Candidates that are at least a twentieth as likely as the best one are reported with it. */
  private static final double NEARLY = 20;

  private static final int MOST_TOLD = 3;

  private final double speedMps;
  private final OptionalDouble lengthM;

  /** A bow with an arrow, and what is expected of its next shot. */
  public record Candidate<K>(K what, Expected speed, Optional<Expected> length) {}

  /**
   * A bow with an arrow that fits a shot better than its tags.
   *
   * @param timesAsLikely how many times as likely as the tags it makes what was measured
   */
  public record Fit<K>(K what, double timesAsLikely) {}

  private Misfit(double speedMps, OptionalDouble lengthM) {
    this.speedMps = speedMps;
    this.lengthM = lengthM;
  }

  /**
   * @param others the candidates besides the tagged one
   * @return those that fit clearly better, the best first; none as a rule
   */
  public static <K> List<Fit<K>> find(
      Candidate<K> tagged, List<Candidate<K>> others, double speedMps, OptionalDouble lengthM) {
    Misfit<K> shot = new Misfit<>(speedMps, lengthM);
    List<Fit<K>> fits =
        others.stream()
            .flatMap(other -> shot.fit(tagged, other).stream())
            .filter(fit -> fit.timesAsLikely() > CLEARLY * others.size())
            .sorted(Comparator.comparingDouble((Fit<K> fit) -> fit.timesAsLikely()).reversed())
            .toList();
    return fits.stream()
        .filter(fit -> fit.timesAsLikely() * NEARLY >= fits.get(0).timesAsLikely())
        .limit(MOST_TOLD)
        .toList();
  }

  private Optional<Fit<K>> fit(Candidate<K> tagged, Candidate<K> other) {
    boolean byLength =
        lengthM.isPresent() && tagged.length().isPresent() && other.length().isPresent();
    return pValue(tagged, byLength) < BAD && pValue(other, byLength) >= GOOD
        ? Optional.of(
            new Fit<>(
                other.what(),
                Math.exp(logLikelihood(other, byLength) - logLikelihood(tagged, byLength))))
        : Optional.empty();
  }

  /**
   * The lesser of the two p values, doubled (Bonferroni); that of the speed where no length is
   * known.
   */
  private double pValue(Candidate<K> candidate, boolean byLength) {
    double p = candidate.speed().pValue(speedMps);
    return byLength
        ? Math.min(
            1, 2 * Math.min(p, candidate.length().orElseThrow().pValue(lengthM.orElseThrow())))
        : p;
  }

  private double logLikelihood(Candidate<K> candidate, boolean byLength) {
    double log = candidate.speed().logLikelihood(speedMps);
    return byLength
        ? log + candidate.length().orElseThrow().logLikelihood(lengthM.orElseThrow())
        : log;
  }
}
