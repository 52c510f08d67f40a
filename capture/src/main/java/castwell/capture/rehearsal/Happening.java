package castwell.capture.rehearsal;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;

/** What happens to the pretended gates and the wire, at a moment of the host's monotonic clock. */
sealed interface Happening {

  double micros();

  /** A gate's beam is blocked or becomes clear. */
  record Beam(double micros, Gate gate, EdgeKind kind, Fate fate) implements Happening {
    Beam(double micros, Gate gate, EdgeKind kind) {
      this(micros, gate, kind, Fate.SENT);
    }

    Beam with(Fate other) {
      return new Beam(micros, gate, kind, other);
    }
  }

  /** The wire carries bytes that no board meant to send. */
  record Noise(double micros, byte[] bytes) implements Happening {}

  /** What becomes of the line that reports an edge. */
  enum Fate {
    SENT,
    LOST,
    CORRUPTED,
    REPEATED
  }
}
