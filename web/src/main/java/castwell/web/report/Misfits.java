package castwell.web.report;

import castwell.analysis.misfit.Misfit;
import castwell.analysis.misfit.Misfit.Candidate;
import castwell.analysis.misfit.Misfit.Fit;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import castwell.web.report.ShotsKnown.What;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Shots that fit another bow or arrow clearly better than their tags, by earlier shots alone.
 * Nothing is changed by it.
 */
public final class Misfits {
  /** So many of the last passages are looked back at. */
  private static final int LOOK_BACK = 1000;

  private final Transaction t;
  private final List<Shot> earlier;

  /**
   * @param fits the best first
   */
  public record Hint(List<Fit<What>> fits, String sentence) {}

  private Misfits(Transaction t, List<Shot> earlier) {
    this.t = t;
    this.earlier = earlier;
  }

  /**
   * @param shots of one station, the first first
   * @return those pointed out, by passage
   */
  public static Map<Long, Hint> of(Transaction t, List<Shot> shots) {
    Map<Long, Hint> hints = new LinkedHashMap<>();
    if (!shots.isEmpty()) {
      Shot last = shots.get(shots.size() - 1);
      List<Shot> earlier = t.shots().before(last.station(), last.fired(), LOOK_BACK);
      Misfits misfits = new Misfits(t, earlier);
      shots.forEach(shot -> misfits.hint(shot).ifPresent(h -> hints.put(shot.passageId(), h)));
    }
    return hints;
  }

  private Optional<Hint> hint(Shot shot) {
    if (!isJudgedByItsTags(shot)) {
      return Optional.empty();
    }
    List<Candidate<What>> known = ShotsKnown.before(t, shot, earlier).candidates();
    What tags = What.of(shot).orElseThrow();
    Optional<Candidate<What>> tagged =
        known.stream().filter(candidate -> candidate.what().equals(tags)).findFirst();
    List<Candidate<What>> others = new ArrayList<>(known);
    tagged.ifPresent(others::remove);
    return tagged
        .map(
            own ->
                Misfit.find(
                    own, others, shot.figure().speedMps().orElseThrow(), shot.figure().lengthM()))
        .filter(fits -> !fits.isEmpty() && isTaggedByNobody(shot))
        .map(fits -> new Hint(fits, sentence(shot, fits)));
  }

  /** Its speed and length were measured well, and no person has had a look at it. */
  private static boolean isJudgedByItsTags(Shot shot) {
    return shot.byGates().isPresent()
        && What.of(shot).isPresent()
        && shot.figure().speedMps().isPresent()
        && !shot.judgedByPerson()
        && (shot.figure().clean() || shot.figure().verdict().equals("not-the-tagged-length"));
  }

  private boolean isTaggedByNobody(Shot shot) {
    return t.tags().history(shot.passageId()).size() == 1;
  }

  private static String sentence(Shot shot, List<Fit<What>> fits) {
    Fit<What> best = fits.get(0);
    String others =
        fits.stream().skip(1).map(fit -> fit.what().words()).collect(Collectors.joining(", "));
    return "It fits %s better than its tags: by earlier shots alone, such a speed%s %s as likely of it.%s"
        .formatted(
            best.what().words(),
            shot.figure().lengthM().isPresent() ? " and length are" : " is",
            times(best.timesAsLikely()),
            others.isEmpty() ? "" : " Nearly as well fits " + others + ".");
  }

  private static String times(double times) {
    return times >= 1e6
        ? "over a million times"
        : String.format(Locale.ROOT, "%,.0f times", Math.floor(times / 100) * 100);
  }
}
