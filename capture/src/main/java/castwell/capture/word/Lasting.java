package castwell.capture.word;

import castwell.analysis.wording.Phrase;
import java.time.Duration;
import java.util.List;

/** Says in words how long something lasts. */
public final class Lasting {

  /**
   * A unit of time.
   *
   * @param from the shortest duration that is told in it, in s
   * @param seconds how many one of it has
   * @param key the text for a number of it
   */
  public record Unit(long from, long seconds, String key) {}

  /** The units, the longest first. */
  public static final List<Unit> UNITS =
      List.of(
          new Unit(172_800, 86_400, "health.days"),
          new Unit(7200, 3600, "health.hours"),
          new Unit(120, 60, "health.minutes"),
          new Unit(0, 1, "health.seconds"));

  private Lasting() {}

  /** The duration rounded down: "12 s", "3 min", "2 h", "4 days". A negative one is "0 s". */
  public static Phrase words(Duration duration) {
    long seconds = Math.max(0, duration.toSeconds());
    Unit unit = UNITS.stream().filter(u -> seconds >= u.from()).findFirst().orElseThrow();
    return Phrase.of(unit.key(), seconds / unit.seconds());
  }
}
