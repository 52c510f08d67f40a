package castwell.capture.daemon;

import castwell.capture.station.ClosedPassage;
import castwell.capture.wire.Sentence.Key;
import java.time.Instant;

/** Something of one station that waits for the disk. It is done as a whole, or not at all. */
sealed interface Write {

  /** A passage, with the raw facts that wait. */
  record Shot(ClosedPassage passage) implements Write {}

  /** What the board's key chose. */
  record KeyPress(Key key, Instant at) implements Write {}

  /** The raw facts that wait, where no passage comes to take them along. */
  record Flush() implements Write {}

  /** The session's figures, at the board's tick rate as it is known when this is done. */
  record Refresh() implements Write {}

  /** Nothing that matters, to see whether the disk takes it. */
  record Probe() implements Write {}
}
