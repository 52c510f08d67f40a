package castwell.capture.assembly;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Which edges belong to one object: told from their ticks alone. */
final class Grouping {
  private final AssemblyTiming timing;
  private final double hz;

  Grouping(AssemblyTiming timing, double hz) {
    this.timing = timing;
    this.hz = hz;
  }

  /**
   * @param edges in ascending number
   */
  List<List<Edge>> split(Collection<Edge> edges) {
    List<List<Edge>> groups = new ArrayList<>();
    List<Edge> group = new ArrayList<>();
    for (Edge edge : edges) {
      if (!group.isEmpty() && !joins(group, edge)) {
        groups.add(group);
        group = new ArrayList<>();
      }
      group.add(edge);
    }
    if (!group.isEmpty()) {
      groups.add(group);
    }
    return groups;
  }

  private boolean joins(List<Edge> group, Edge next) {
    if (next.ticks() - group.get(0).ticks() > ticks(AssemblyTiming.LONGEST)) {
      return false;
    }
    long gap = Math.abs(next.ticks() - lastTicks(group));
    if (gap <= ticks(timing.quiet())) {
      return true;
    }
    return !isComplete(group) && gap <= ticks(patience(group)) && !isBlockedAgain(group, next);
  }

  /** After silence, a second "blocked" at a gate is a second object. */
  private static boolean isBlockedAgain(List<Edge> group, Edge next) {
    return next.kind() == EdgeKind.BLOCKED
        && group.stream()
            .anyMatch(edge -> edge.gate() == next.gate() && edge.kind() == EdgeKind.BLOCKED);
  }

  /** How long silence must last until nothing more of this object can come. */
  Duration patience(List<Edge> group) {
    if (isComplete(group)) {
      return timing.quiet();
    }
    boolean sawA = group.stream().anyMatch(edge -> edge.gate() == Gate.A);
    boolean sawB = group.stream().anyMatch(edge -> edge.gate() == Gate.B);
    Duration other = sawA ? AssemblyTiming.FOR_GATE_B : AssemblyTiming.FOR_GATE_A;
    Duration patience = sawA && sawB ? AssemblyTiming.FOR_THE_REST : other;
    return patience.compareTo(timing.quiet()) > 0 ? patience : timing.quiet();
  }

  long ticks(Duration duration) {
    return Math.round(duration.toNanos() * 1e-9 * hz);
  }

  static boolean isComplete(List<Edge> group) {
    return !group.isEmpty() && Passage.of(group).isComplete();
  }

  static long lastTicks(List<Edge> group) {
    return group.stream().mapToLong(Edge::ticks).max().orElseThrow();
  }

  static long firstTicks(List<Edge> group) {
    return group.stream().mapToLong(Edge::ticks).min().orElseThrow();
  }
}
