package castwell.capture.rehearsal;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;

/** What befalls the pretended gates and the wire, at a moment of the host's monotonic clock. */
sealed interface Happening {

  double micros();

  /** A beam is blocked or comes clear. */
  record Beam(double micros, Gate gate, EdgeKind kind, Fate fate) implements Happening {
    Beam(double micros, Gate gate, EdgeKind kind) {
      this(micros, gate, kind, Fate.SENT);
    }

    Beam with(Fate other) {
      return new Beam(micros, gate, kind, other);
    }
  }

  /** Bytes that no board ever meant to send. */
  record Noise(double micros, byte[] bytes) implements Happening {}

  /** What becomes of the line that tells of an edge. */
  enum Fate {
    SENT,
    LOST,
    CORRUPTED,
    REPEATED
  }
}
