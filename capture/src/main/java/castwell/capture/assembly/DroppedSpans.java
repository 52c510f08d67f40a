package castwell.capture.assembly;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passage;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/**
 * The spans, in full ticks, in which the board had to drop edges. Dropped edges have no numbers, so
 * only time tells which passage they belong to.
 */
final class DroppedSpans {
  private static final int KEPT = 256;

  private final Deque<Span> spans = new ArrayDeque<>();
  private final long slack;

  private record Span(long first, long last) {}

  /**
   * @param slack how near to a passage a span must be to concern it, in ticks
   */
  DroppedSpans(long slack) {
    this.slack = slack;
  }

  void add(long first, long last) {
    spans.addLast(new Span(first, last));
    if (spans.size() > KEPT) {
      spans.removeFirst();
    }
  }

  boolean overlap(List<Edge> edges) {
    if (spans.isEmpty() || edges.isEmpty()) {
      return false;
    }
    long from = Grouping.firstTicks(edges) - slack;
    long to = Grouping.lastTicks(edges) + slack;
    return spans.stream().anyMatch(span -> span.first <= to && span.last >= from);
  }

  boolean overlap(Passage passage) {
    return overlap(passage.edges());
  }
}
