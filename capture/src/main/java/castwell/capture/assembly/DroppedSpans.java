package castwell.capture.assembly;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passage;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/** When the board had to drop edges, in full ticks. Those have no numbers, so only time tells. */
final class DroppedSpans {
  private static final int KEPT = 256;

  private final Deque<Span> spans = new ArrayDeque<>();
  private final long slack;

  private record Span(long first, long last) {}

  /**
   * @param slack how near, in ticks, counts as meanwhile
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

  boolean touch(List<Edge> edges) {
    if (spans.isEmpty() || edges.isEmpty()) {
      return false;
    }
    long from = Grouping.firstTicks(edges) - slack;
    long to = Grouping.lastTicks(edges) + slack;
    return spans.stream().anyMatch(span -> span.first <= to && span.last >= from);
  }

  boolean touch(Passage passage) {
    return touch(passage.edges());
  }
}
