package castwell.capture.daemon;

import castwell.capture.station.ClosedPassage;
import castwell.capture.wire.Sentence.Key;
import java.time.Instant;

/** Something of one station that waits for the disk. Each is written as a whole, or not at all. */
sealed interface Write {

  /** Writes a passage, with the raw facts that wait. */
  record Shot(ClosedPassage passage) implements Write {}

  /** Carries out what a press of the board's key chose. */
  record KeyPress(Key key, Instant at) implements Write {}

  /** Writes the raw facts that wait, where no passage comes to take them along. */
  record Flush() implements Write {}

  /**
   * Derives the session's figures again, at the board's tick rate as it is known when this is done.
   */
  record Refresh() implements Write {}

  /** Writes something that doesn't matter, to see whether the disk takes it. */
  record Probe() implements Write {}
}
