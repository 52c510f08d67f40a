package castwell.capture.assembly;

import java.time.Duration;

/**
 * How long the assembler waits, and for what.
 *
 * @param quiet the silence of the gates after which a complete passage closes
 * @param holeWait how long to wait for an edge that must exist by its number
 */
public record AssemblyTiming(Duration quiet, Duration holeWait) {

  public static AssemblyTiming defaults() {
    return new AssemblyTiming(Duration.ofMillis(10), Duration.ofMillis(300));
  }
}
