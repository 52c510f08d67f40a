package castwell.capture.wire;

/** What can go wrong between a board and the store, each named and counted, none fatal. */
public enum Fault {
  /** Bytes outside any sentence, or bytes that no sentence has. */
  GARBAGE,
  /** A sentence that ended before its CRC. */
  TRUNCATED,
  /** More than 120 bytes without an end. */
  TOO_LONG,
  BAD_CRC,
  /** The CRC is right and a field isn't: an error of the board's firmware. */
  BAD_FIELD,
  /** The CRC is right and the type is none that this program knows. */
  UNKNOWN_SENTENCE,
  /** Sentences lost on the way: the line numbers have a gap. */
  LINE_GAP,
  /** Edges that were stamped and had not arrived when the next one did. */
  EDGE_GAP,
  /** Edges that came again: harmless. */
  REPEATED_EDGE,
  /** Edges that never arrived, asked for or not. */
  LOST_EDGE,
  /** Edges that the board itself had to drop. */
  DROPPED_BY_BOARD,
  /** An edge's name came again with other ticks: two boards of one name, or a reset counter. */
  NAME_REUSED,
  BOARD_RESTARTED
}
