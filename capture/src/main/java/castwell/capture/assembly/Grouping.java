package castwell.capture.assembly;

import castwell.analysis.reading.ClusterCut;
import castwell.analysis.reading.ClusterCut.Open;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Decides which edges belong to one object, from their ticks alone. */
final class Grouping {
  private final ClusterCut cut;
  private final double hz;

  Grouping(ClusterCut cut, double hz) {
    this.cut = cut;
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
    if (next.ticks() - group.get(0).ticks() > ticks(ClusterCut.LONGEST_S)
        || Holes.isLeap(group.get(group.size() - 1).number(), next.number())) {
      return false;
    }
    if (Math.abs(next.ticks() - lastTicks) <= ticks(cut.quietS())) {
      return true; // as most do, however long the group is
    }
    Open open = open(group);
    return cut.joins(open, next, hz) && !isBlockedAgain(group, open, next);
  }

  private static Open open(List<Edge> group) {
    Open open = Open.begin(group.get(0));
    for (Edge edge : group.subList(1, group.size())) {
      open = open.with(edge);
    }
    return open;
  }

  /**
   * Whether the next edge, after silence, is a second object's because it blocks a gate once more.
   * If no line was lost, a gate that is blocked can't be; if one was, it may have told how this
   * object left that gate, and a gate that it left surely is blocked by another.
   */
  private static boolean isBlockedAgain(List<Edge> group, Open open, Edge next) {
    boolean linesLost = next.number() > group.get(group.size() - 1).number() + 1;
    return next.kind() == EdgeKind.BLOCKED
        && group.stream()
            .anyMatch(edge -> edge.gate() == next.gate() && edge.kind() == EdgeKind.BLOCKED)
        && open.isBlocked(next.gate()) != linesLost;
  }

  /** How many seconds silence must last before nothing more of this object can come. */
  double patienceS(List<Edge> group) {
    return cut.closesAfterS(open(group));
  }

  long ticks(double seconds) {
    return Math.round(seconds * hz);
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
