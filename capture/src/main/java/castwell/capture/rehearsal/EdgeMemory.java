package castwell.capture.rehearsal;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * The last edges of the pretended board, kept as the fields of their sentences to be sent again.
 */
final class EdgeMemory {
  static final int KEEP = 64;

  record Kept(int number, String fields) {}

  private final Deque<Kept> kept = new ArrayDeque<>();

  void add(int number, String fields) {
    kept.add(new Kept(number, fields));
    if (kept.size() > KEEP) {
      kept.remove();
    }
  }

  /** The number of the oldest edge that is kept; the number after {@code highest} when none is. */
  int oldest(int highest) {
    return kept.isEmpty() ? highest + 1 : kept.peek().number();
  }

  Iterable<Kept> all() {
    return kept;
  }
}
