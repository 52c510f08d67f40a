package castwell.capture.assembly;

import java.time.Duration;

/**
 * How long the assembler waits, and for what.
 *
 * @param quiet the silence of the gates after which a complete passage closes
 * @param holeWait how long to wait for an edge that must exist by its number
 */
public record AssemblyTiming(Duration quiet, Duration holeWait) {

  /**
   * How long to wait for gate B: an object seen by gate A alone may be a slow one on its way there.
   */
  static final Duration FOR_GATE_B = Duration.ofMillis(250);

  /** How long to wait while a gate stays blocked: at 3 m/s an arrow takes this long. */
  static final Duration FOR_THE_REST = Duration.ofMillis(200);

  /**
   * The longest passage: what goes on for longer is no object, so a lamp that flickers is cut into
   * pieces this long.
   */
  static final Duration LONGEST = Duration.ofSeconds(1);

  /** The silence that closes what both gates have let go, long enough for gates so far apart. */
  Duration quiet(Gates gates) {
    return longer(quiet, gates.quiet());
  }

  static Duration longer(Duration one, Duration other) {
    return one.compareTo(other) > 0 ? one : other;
  }

  public static AssemblyTiming defaults() {
    return new AssemblyTiming(Duration.ofMillis(10), Duration.ofMillis(300));
  }
}
