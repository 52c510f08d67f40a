package castwell.capture.assembly;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Decides which edges belong to one object, from their ticks alone. */
final class Grouping {
  private final AssemblyTiming timing;
  private final double hz;

  Grouping(AssemblyTiming timing, double hz) {
    this.timing = timing;
    this.hz = hz;
  }

  /**
   * Splits edges into groups, one for each object.
   *
   * @param edges edges in ascending number
   */
  List<List<Edge>> split(Collection<Edge> edges) {
    List<List<Edge>> groups = new ArrayList<>();
    List<Edge> group = new ArrayList<>();
    long lastTicks = Long.MIN_VALUE;
    for (Edge edge : edges) {
      if (!group.isEmpty() && !joins(group, lastTicks, edge)) {
        groups.add(group);
        group = new ArrayList<>();
        lastTicks = Long.MIN_VALUE;
      }
      group.add(edge);
      lastTicks = Math.max(lastTicks, edge.ticks());
    }
    if (!group.isEmpty()) {
      groups.add(group);
    }
    return groups;
  }

  private boolean joins(List<Edge> group, long lastTicks, Edge next) {
    if (next.ticks() - group.get(0).ticks() > ticks(AssemblyTiming.LONGEST)
        || Holes.isLeap(group.get(group.size() - 1).number(), next.number())) {
      return false;
    }
    long gap = Math.abs(next.ticks() - lastTicks);
    if (gap <= ticks(timing.quiet())) {
      return true;
    }
    return lacksEnd(group) && gap <= ticks(patience(group)) && !isBlockedAgain(group, next);
  }

  /**
   * Whether the next edge, after silence, is a second object's: a second "blocked" at a gate is,
   * unless the line that told of the "clear" between them was lost.
   */
  private static boolean isBlockedAgain(List<Edge> group, Edge next) {
    List<EdgeKind> seen =
        group.stream().filter(edge -> edge.gate() == next.gate()).map(Edge::kind).toList();
    boolean linesLost = next.number() > group.get(group.size() - 1).number() + 1;
    boolean leftBlocked = !seen.isEmpty() && seen.get(seen.size() - 1) == EdgeKind.BLOCKED;
    return next.kind() == EdgeKind.BLOCKED
        && seen.contains(EdgeKind.BLOCKED)
        && !(linesLost && leftBlocked);
  }

  /** How long silence must last before nothing more of this object can come. */
  Duration patience(List<Edge> group) {
    if (!lacksEnd(group)) {
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

  /**
   * Whether an edge is still to come, since a gate saw nothing or is still blocked as far as is
   * known.
   */
  static boolean lacksEnd(List<Edge> group) {
    return lacks(group.size() - 1, -1, group, EdgeKind.CLEAR);
  }

  /** Whether an edge came before, since a gate saw nothing or began by becoming clear. */
  static boolean lacksBeginning(List<Edge> group) {
    return lacks(0, 1, group, EdgeKind.BLOCKED);
  }

  /**
   * Whether the first edge of either gate, counted from one end of the group, is missing or of
   * another kind.
   */
  private static boolean lacks(int from, int step, List<Edge> group, EdgeKind kind) {
    boolean metA = false;
    boolean metB = false;
    for (int i = from; i >= 0 && i < group.size() && !(metA && metB); i += step) {
      Edge edge = group.get(i);
      boolean first = edge.gate() == Gate.A ? !metA : !metB;
      if (first && edge.kind() != kind) {
        return true;
      }
      metA |= edge.gate() == Gate.A;
      metB |= edge.gate() == Gate.B;
    }
    return !(metA && metB);
  }

  static long lastTicks(List<Edge> group) {
    return group.stream().mapToLong(Edge::ticks).max().orElseThrow();
  }

  static long firstTicks(List<Edge> group) {
    return group.stream().mapToLong(Edge::ticks).min().orElseThrow();
  }
}
