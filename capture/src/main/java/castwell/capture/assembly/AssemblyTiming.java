package castwell.capture.assembly;

import java.time.Duration;

/**
 * How long the assembler waits, and for what.
 *
 * @param quiet the gates' silence that closes a complete passage
 * @param holeWait how long an edge that the numbers say exists is waited for
 */
public record AssemblyTiming(Duration quiet, Duration holeWait) {

  /** An object seen by gate A alone may be a slow one on its way to gate B. */
  static final Duration FOR_GATE_B = Duration.ofMillis(250);

  /** An object seen by gate B alone may be one that flies the wrong way. */
  static final Duration FOR_GATE_A = Duration.ofMillis(60);

  /** Both gates were reached and something is missing: at 3 m/s it is this long on its way. */
  static final Duration FOR_THE_REST = Duration.ofMillis(200);

  /** What goes on for longer is no object: a lamp that flickers is cut to pieces of this length. */
  static final Duration LONGEST = Duration.ofSeconds(1);

  public static AssemblyTiming defaults() {
    return new AssemblyTiming(Duration.ofMillis(10), Duration.ofMillis(300));
  }
}
