package castwell.capture.word;

import java.time.Duration;

/** How long something lasts, in words. */
public final class Lasting {
  private Lasting() {}

  /** Rounded down: "12 s", "3 min", "2 h", "4 days"; what is negative is "0 s". */
  public static String words(Duration duration) {
    long seconds = Math.max(0, duration.toSeconds());
    if (seconds < 120) {
      return seconds + " s";
    }
    if (seconds < 7200) {
      return seconds / 60 + " min";
    }
    return seconds < 172_800 ? seconds / 3600 + " h" : seconds / 86_400 + " days";
  }
}
