package castwell.capture.assembly;

import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * What the heartbeats of one boot tell of when an edge was stamped, since each beat says how many
 * edges there were at its tick. The log unwraps 32-bit stamps and dates edges whose lines were
 * lost.
 */
final class BeatLog {
  private static final int KEPT = 256;
  private static final long WRAP = 1L << 32;

  /** The ticks of the first and the last beat that told the same count of edges. */
  private record Span(long first, long last) {}

  private final TreeMap<Integer, Span> spans = new TreeMap<>();
  private final long slack;

  /**
   * @param slack how far a beat's count of edges may be out of step with its own stamp, in ticks
   */
  BeatLog(long slack) {
    this.slack = slack;
  }

  void add(int edges, long ticks48) {
    spans.merge(
        edges,
        new Span(ticks48, ticks48),
        (old, now) -> new Span(Math.min(old.first, now.first), Math.max(old.last, now.last)));
    while (spans.size() > KEPT) {
      spans.pollFirstEntry();
    }
  }

  boolean isEmpty() {
    return spans.isEmpty();
  }

  /** The last tick at which the edge is known not to have been stamped yet. */
  OptionalLong notYetAt(int edge) {
    return ticks(spans.lowerEntry(edge), false);
  }

  /** The first tick at which the edge is known to have been stamped. */
  OptionalLong alreadyAt(int edge) {
    return ticks(spans.ceilingEntry(edge), true);
  }

  /** For how many ticks just before the edge nothing was stamped, as far as the beats tell. */
  long silentBefore(int edge) {
    Span span = spans.get(edge - 1);
    return span == null ? 0 : span.last - span.first;
  }

  private static OptionalLong ticks(Map.Entry<Integer, Span> entry, boolean first) {
    return entry == null
        ? OptionalLong.empty()
        : OptionalLong.of(first ? entry.getValue().first : entry.getValue().last);
  }

  /**
   * The full count of a 32-bit stamp: the first possible one after the last beat that had not
   * counted the edge, or else the last possible one before the first beat that had.
   */
  long unwrap(int edge, long ticks32) {
    OptionalLong before = notYetAt(edge);
    if (before.isPresent()) {
      long from = Math.max(0, before.getAsLong() - slack);
      return from + Math.floorMod(ticks32 - from, WRAP);
    }
    OptionalLong after = alreadyAt(edge);
    if (after.isPresent()) {
      long to = after.getAsLong() + slack;
      long unwrapped = to - Math.floorMod(to - ticks32, WRAP);
      return unwrapped < 0 ? unwrapped + WRAP : unwrapped;
    }
    return ticks32;
  }

  /** The full count of a 32-bit stamp taken not long before or after the last beat. */
  long nearest(long ticks32) {
    long latest = spans.isEmpty() ? 0 : spans.lastEntry().getValue().last;
    long unwrapped = latest + (int) (ticks32 - latest);
    return unwrapped < 0 ? unwrapped + WRAP : unwrapped;
  }
}
