package castwell.analysis.reading;

/** What an edge is in a story. */
public enum Part {
  FRONT,
  TAIL,
  /** Fletching let light through, just before the tail. */
  FLUTTER,
  /** The comparator switched to and fro, next to a true edge. */
  BOUNCE,
  /** Light came through the arrow elsewhere. */
  LIGHT,
  /** Something else blocked the gate, or cleared it again. */
  OTHER,
  /** It has no partner, so that nothing more is known of it. */
  UNKNOWN,
  /** A lamp flickered. */
  LAMP
}
