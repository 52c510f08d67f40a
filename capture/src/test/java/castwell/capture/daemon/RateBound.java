package castwell.capture.daemon;

/**
 * How well a board's rate can be told from its heartbeats: the lower edge of N points over a time
 * T, each late by up to D, tilts by 3 D / (N T) mostly, and by 45 D / (N T) once in thousands, as a
 * simulation of uniform delays says.
 */
final class RateBound {
  private static final int FEWEST_BEATS = 8;

  private final double mostDelaySeconds;
  private int beats;
  private double firstSeconds;
  private double uncertainty = Double.POSITIVE_INFINITY;

  RateBound(double mostDelaySeconds) {
    this.mostDelaySeconds = mostDelaySeconds;
  }

  void restart() {
    beats = 0;
  }

  void beat(double seconds) {
    firstSeconds = beats == 0 ? seconds : firstSeconds;
    beats++;
    if (beats >= FEWEST_BEATS) {
      double tilt = 45 * mostDelaySeconds / (beats * (seconds - firstSeconds));
      uncertainty = Math.min(uncertainty, tilt);
    }
  }

  /** Relative, from the boot that tells it best; infinite while none does. */
  double uncertainty() {
    return uncertainty;
  }
}
