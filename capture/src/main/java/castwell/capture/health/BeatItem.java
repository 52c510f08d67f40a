package castwell.capture.health;

import castwell.analysis.statistic.Median;
import castwell.analysis.wording.Phrase;
import castwell.capture.store.HeardBeat;
import castwell.capture.view.health.Level;
import castwell.capture.word.Lasting;
import castwell.capture.word.Rounded;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** Judges whether all heartbeats come, about one a second. */
final class BeatItem {
  private static final Subject SUBJECT = Subject.of("heartbeat", "health.title_heartbeat");
  private static final Phrase REMEDY = Phrase.of("health.cable");

  /** The tick rate that is assumed of a board that never told its own. */
  private static final double USUAL_HZ = 2_000_000;

  /**
   * A heartbeat lost now and then does no harm; one in a hundred does (common practice, no source).
   */
  private static final double MOST_MISSED = 0.01;

  private static final double MOST_MISSED_BAD = 0.1;

  private BeatItem() {}

  static Item of(Vitals vitals) {
    if (vitals.isSilent()) {
      return Item.bad(SUBJECT, Phrase.of("health.beat_none"), Phrase.of("health.see_port"));
    }
    List<Double> intervals = intervals(vitals);
    if (intervals.isEmpty()) {
      return Item.cantTell(SUBJECT, Phrase.of("health.beat_few"), Phrase.of("health.wait_seconds"));
    }
    double usual = Median.of(intervals.stream().mapToDouble(d -> d).toArray());
    long missed = intervals.stream().mapToLong(d -> Math.max(0, Math.round(d / usual) - 1)).sum();
    double share = (double) missed / (missed + intervals.size());
    Level level =
        share > MOST_MISSED_BAD ? Level.BAD : share > MOST_MISSED ? Level.ATTENTION : Level.WELL;
    return Item.of(SUBJECT, level, sentence(vitals, usual, missed, intervals.size()), REMEDY)
        .with(Measured.of(usual, "s", intervals.size()));
  }

  /**
   * The intervals between heartbeats in s, by the board's own clock, so that a host that is late or
   * sets its clock doesn't distort them.
   */
  private static List<Double> intervals(Vitals vitals) {
    double hz = vitals.rate().map(BoardRate::nominalHz).orElse(USUAL_HZ);
    List<Double> seconds = new ArrayList<>();
    List<HeardBeat> beats = vitals.beats();
    for (int i = 1; i < beats.size(); i++) {
      var before = beats.get(i - 1).beat();
      var beat = beats.get(i).beat();
      if (beat.boot() == before.boot() && beat.ticks48() > before.ticks48()) {
        seconds.add((beat.ticks48() - before.ticks48()) / hz);
      }
    }
    return seconds;
  }

  private static Phrase sentence(Vitals vitals, double usual, long missed, int n) {
    String every = Rounded.to(3, usual);
    long beats = missed + n + 1;
    return vitals
        .link()
        .map(link -> Lasting.words(Duration.between(link.since(), vitals.at())))
        .map(since -> Phrase.of("health.beat_since", since, every, beats, missed))
        .orElseGet(() -> Phrase.of("health.beat", every, beats, missed));
  }
}
