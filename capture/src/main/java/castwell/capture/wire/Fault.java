package castwell.capture.wire;

/**
 * The faults that can happen between a board and the store; each is named and counted, and none is
 * fatal.
 */
public enum Fault {
  /** Bytes came outside any sentence, or bytes that no sentence has. */
  GARBAGE,
  /** A sentence ended before its CRC. */
  TRUNCATED,
  /** A sentence went on for more than 120 bytes without an end. */
  TOO_LONG,
  BAD_CRC,
  /** The CRC is right but a field isn't, which is an error of the board's firmware. */
  BAD_FIELD,
  /** The CRC is right but this program doesn't know the type. */
  UNKNOWN_SENTENCE,
  /** The line numbers have a gap, so sentences were lost on the way. */
  LINE_GAP,
  /** An edge was stamped but had not arrived when the next one did. */
  EDGE_GAP,
  /** An edge came again, which is harmless. */
  REPEATED_EDGE,
  /** An edge never arrived, whether or not it was asked for. */
  LOST_EDGE,
  /** The board itself had to drop an edge. */
  DROPPED_BY_BOARD,
  /**
   * An edge's name came again with other ticks, since two boards have one name or a boot counter
   * was reset.
   */
  NAME_REUSED,
  BOARD_RESTARTED
}
