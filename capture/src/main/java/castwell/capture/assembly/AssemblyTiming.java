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

  /** How long to wait for gate A: an object seen by gate B alone may fly the wrong way. */
  static final Duration FOR_GATE_A = Duration.ofMillis(60);

  /**
   * How long to wait for what is missing once both gates were reached: at 3 m/s it takes this long.
   */
  static final Duration FOR_THE_REST = Duration.ofMillis(200);

  /**
   * The longest passage: what goes on for longer is no object, so a lamp that flickers is cut into
   * pieces this long.
   */
  static final Duration LONGEST = Duration.ofSeconds(1);

  public static AssemblyTiming defaults() {
    return new AssemblyTiming(Duration.ofMillis(10), Duration.ofMillis(300));
  }
}
