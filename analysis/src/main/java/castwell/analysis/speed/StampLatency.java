package castwell.analysis.speed;

import castwell.analysis.shot.Gate;

/**
 * How late each gate's stamps are by construction, which is subtracted from them.
 *
 * @param aSeconds gate A's latency, negative when its stamps are early
 * @param bSeconds gate B's latency, negative likewise
 */
public record StampLatency(double aSeconds, double bSeconds) {
  public static final StampLatency NONE = new StampLatency(0, 0);

  /**
   * @throws IllegalArgumentException when a latency is not a finite number
   */
  public StampLatency {
    if (!Double.isFinite(aSeconds) || !Double.isFinite(bSeconds)) {
      throw new IllegalArgumentException(
          "a gate's stamp latency is a finite number of seconds, not "
              + (Double.isFinite(aSeconds) ? bSeconds : aSeconds));
    }
  }

  /** How late that gate's stamps are, in seconds. */
  public double seconds(Gate gate) {
    return gate == Gate.A ? aSeconds : bSeconds;
  }
}
