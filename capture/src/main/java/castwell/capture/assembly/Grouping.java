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
  private final Duration quiet;
  private final double hz;

  /**
   * @param quiet the silence that parts two objects
   */
  Grouping(Duration quiet, double hz) {
    this.quiet = quiet;
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
    return gap <= ticks(quiet)
        || gap <= ticks(patience(group)) && mayGoOn(group, next) && !isBlockedAgain(group, next);
  }

  /**
   * Whether an edge after silence can be of the same object: a gate that this object blocked is
   * still blocked, or it left gate A and now reaches gate B. What gate B alone saw, and has let go,
   * is nothing that gate A will still see.
   */
  private static boolean mayGoOn(List<Edge> group, Edge next) {
    return isBlocked(group, Gate.A)
        || isBlocked(group, Gate.B)
        || !saw(group, Gate.B) && next.gate() == Gate.B;
  }

  /**
   * Whether the next edge, after silence, is a second object's: a second "blocked" at a gate is,
   * unless the line that told of the "clear" between them was lost.
   */
  private static boolean isBlockedAgain(List<Edge> group, Edge next) {
    boolean linesLost = next.number() > group.get(group.size() - 1).number() + 1;
    return next.kind() == EdgeKind.BLOCKED
        && group.stream()
            .anyMatch(edge -> edge.gate() == next.gate() && edge.kind() == EdgeKind.BLOCKED)
        && !(linesLost && isBlocked(group, next.gate()));
  }

  private static boolean saw(List<Edge> group, Gate gate) {
    return group.stream().anyMatch(edge -> edge.gate() == gate);
  }

  /** Whether the gate's last edge leaves it blocked, as two in one stamp may. */
  private static boolean isBlocked(List<Edge> group, Gate gate) {
    for (int i = group.size() - 1; i >= 0; i--) {
      if (group.get(i).gate() == gate) {
        return group.get(i).kind() != EdgeKind.CLEAR;
      }
    }
    return false;
  }

  /** How long silence must last before nothing more of this object can come. */
  Duration patience(List<Edge> group) {
    boolean blocked = isBlocked(group, Gate.A) || isBlocked(group, Gate.B);
    if (saw(group, Gate.B)) {
      return blocked ? AssemblyTiming.longer(quiet, AssemblyTiming.FOR_THE_REST) : quiet;
    }
    return AssemblyTiming.longer(quiet, AssemblyTiming.FOR_GATE_B);
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
