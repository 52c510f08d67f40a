package castwell.capture.misfit;

import castwell.analysis.misfit.Misfit;
import castwell.analysis.misfit.Misfit.Candidate;
import castwell.analysis.wording.Phrase;
import castwell.capture.misfit.ShotsKnown.BowAndArrow;
import castwell.capture.season.SeasonLedger;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Sessions;
import castwell.capture.store.Shot;
import castwell.capture.store.Shots.Known;
import castwell.capture.store.Transaction;
import castwell.capture.word.Rounded;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Finds shots that fit another bow or arrow clearly better than their tags, judged by earlier shots
 * alone. It only points them out and changes nothing.
 */
public final class Misfits {
  /** How many earlier shots the judgement rests on at most. */
  private static final int LOOK_BACK = 1000;

  /** How many of an end's last shots are judged. */
  private static final int LOOKED_AT = 60;

  private final Transaction t;
  private final List<Known> earlier;
  private final long sessionId;
  private final Map<Long, List<BowState>> states;
  private final double otherDay;

  /** A bow and an arrow that a shot fits. */
  public record Fit(String bow, String arrow, double timesAsLikely) {
    private Phrase phrase() {
      return Phrase.of("report.misfit.fit", bow, arrow);
    }
  }

  /**
   * What is pointed out about one shot.
   *
   * @param fits the best first
   */
  public record Hint(List<Fit> fits, List<Phrase> sentences) {}

  private Misfits(Transaction t, List<Known> earlier, long sessionId) {
    this.t = t;
    this.earlier = earlier;
    this.sessionId = sessionId;
    this.otherDay = SeasonLedger.otherDay(t);
    this.states =
        earlier.stream()
            .map(Known::bowId)
            .distinct()
            .collect(Collectors.toMap(id -> id, id -> t.rack().states(id)));
  }

  /**
   * Points out misfits.
   *
   * @param shots of one session, the first first
   * @return the hints by passage
   */
  public static Map<Long, Hint> of(Transaction t, List<Shot> shots) {
    Map<Long, Hint> hints = new LinkedHashMap<>();
    if (shots.stream().anyMatch(Misfits::isJudgedByItsTags)) {
      Shot last = shots.get(shots.size() - 1);
      List<Known> earlier = t.shots().known(last.station(), last.fired(), LOOK_BACK);
      long session = t.sessions().byName(last.session()).map(Sessions.Session::id).orElseThrow();
      Misfits misfits = new Misfits(t, earlier, session);
      List<Shot> newest = shots.subList(Math.max(0, shots.size() - LOOKED_AT), shots.size());
      newest.forEach(shot -> misfits.hint(shot).ifPresent(h -> hints.put(shot.passageId(), h)));
    }
    return hints;
  }

  private Optional<Hint> hint(Shot shot) {
    if (!isJudgedByItsTags(shot)) {
      return Optional.empty();
    }
    BowAndArrow tags =
        new BowAndArrow(shot.bow().orElseThrow().bowId(), shot.arrow().orElseThrow().id());
    List<Candidate<BowAndArrow>> others =
        new ArrayList<>(
            ShotsKnown.before(shot.fired(), sessionId, earlier, states, otherDay).candidates());
    Optional<Candidate<BowAndArrow>> tagged =
        others.stream().filter(candidate -> candidate.what().equals(tags)).findFirst();
    tagged.ifPresent(others::remove);
    return tagged
        .map(own -> fits(own, others, shot))
        .filter(fits -> !fits.isEmpty() && isTaggedByNobody(shot))
        .map(fits -> new Hint(fits, sentences(shot, fits)));
  }

  private List<Fit> fits(
      Candidate<BowAndArrow> tagged, List<Candidate<BowAndArrow>> others, Shot shot) {
    double mps = shot.figure().speedMps().orElseThrow();
    return Misfit.find(tagged, others, mps, shot.figure().lengthM()).stream()
        .map(
            fit ->
                new Fit(
                    states.get(fit.what().bowId()).get(0).bow(),
                    t.rack().arrowById(fit.what().arrowId()).map(Rack.Arrow::name).orElseThrow(),
                    fit.timesAsLikely()))
        .toList();
  }

  /** Whether a shot's speed and length were measured well and no person has looked at it yet. */
  private static boolean isJudgedByItsTags(Shot shot) {
    return shot.byGates().isPresent()
        && shot.bow().isPresent()
        && shot.arrow().isPresent()
        && shot.figure().speedMps().isPresent()
        && !shot.judgedByPerson()
        && (shot.figure().clean() || shot.figure().verdict().equals("not-the-tagged-length"));
  }

  private boolean isTaggedByNobody(Shot shot) {
    return t.tags().history(shot.passageId()).size() == 1;
  }

  private static List<Phrase> sentences(Shot shot, List<Fit> fits) {
    Fit best = fits.get(0);
    boolean byLength = shot.figure().lengthM().isPresent();
    Phrase first =
        Phrase.of(
            byLength ? "report.misfit.by_speed_and_length" : "report.misfit.by_speed",
            best.phrase(),
            times(best.timesAsLikely()));
    return Stream.concat(Stream.of(first), others(fits.subList(1, fits.size())).stream()).toList();
  }

  private static Optional<Phrase> others(List<Fit> others) {
    return others.stream()
        .map(Fit::phrase)
        .reduce((some, next) -> Phrase.of("report.misfit.fits", some, next))
        .map(all -> Phrase.of("report.misfit.others", all));
  }

  private static Phrase times(double times) {
    return times >= 1e6
        ? Phrase.of("report.misfit.million_times")
        : Phrase.of("report.misfit.times", Rounded.grouped(Math.floor(times / 100) * 100));
  }
}
