package castwell.capture.word;

import castwell.analysis.wording.Phrase;
import java.time.Duration;

/** How long something lasts, in words. */
public final class Lasting {
  private Lasting() {}

  /** Rounded down: "12 s", "3 min", "2 h", "4 days"; what is negative is "0 s". */
  public static Phrase words(Duration duration) {
    long seconds = Math.max(0, duration.toSeconds());
    if (seconds < 120) {
      return Phrase.of("health.seconds", seconds);
    }
    if (seconds < 7200) {
      return Phrase.of("health.minutes", seconds / 60);
    }
    return seconds < 172_800
        ? Phrase.of("health.hours", seconds / 3600)
        : Phrase.of("health.days", seconds / 86_400);
  }
}
