package castwell.analysis.shot;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * One object crossing the gates: the edges that arrived, in the order stamped, and the numbers of
 * those that are known to exist and never arrived.
 *
 * @param edges the edges that arrived, in ascending number; empty when every one of them was lost
 * @param lostEdges the numbers of edges within this passage that never arrived, ascending
 * @param boardRestarted whether the board started anew before the passage was complete
 * @param edgesDropped whether the board itself had to drop edges meanwhile; such edges have no
 *     numbers
 */
public record Passage(
    List<Edge> edges, List<Integer> lostEdges, boolean boardRestarted, boolean edgesDropped) {

  public Passage {
    edges = List.copyOf(edges);
    lostEdges = List.copyOf(lostEdges);
    if (edges.isEmpty() && lostEdges.isEmpty()) {
      throw new IllegalArgumentException("a passage needs at least one edge");
    }
  }

  public Passage(List<Edge> edges, List<Integer> lostEdges, boolean boardRestarted) {
    this(edges, lostEdges, boardRestarted, false);
  }

  public static Passage of(List<Edge> edges) {
    return new Passage(edges, List.of(), false);
  }

  /** The numbers of its edges, whether or not they arrived. */
  public Set<Integer> numbers() {
    Set<Integer> numbers = new TreeSet<>(lostEdges);
    edges.forEach(edge -> numbers.add(edge.number()));
    return numbers;
  }

  /** The number of the first edge, whether or not it arrived. */
  public int firstEdge() {
    int arrived = edges.isEmpty() ? Integer.MAX_VALUE : edges.get(0).number();
    int lost = lostEdges.isEmpty() ? Integer.MAX_VALUE : lostEdges.get(0);
    return Math.min(arrived, lost);
  }

  /** The number of the last edge, whether or not it arrived. */
  public int lastEdge() {
    int arrived = edges.isEmpty() ? 0 : edges.get(edges.size() - 1).number();
    int lost = lostEdges.isEmpty() ? 0 : lostEdges.get(lostEdges.size() - 1);
    return Math.max(arrived, lost);
  }

  /** The gate's front: its first "blocked". */
  public Optional<Edge> front(Gate gate) {
    return edges.stream()
        .filter(edge -> edge.gate() == gate && edge.kind() == EdgeKind.BLOCKED)
        .min(Comparator.comparingLong(Edge::ticks));
  }

  /** The gate's tail: its last "clear". */
  public Optional<Edge> tail(Gate gate) {
    return edges.stream()
        .filter(edge -> edge.gate() == gate && edge.kind() == EdgeKind.CLEAR)
        .max(Comparator.comparingLong(Edge::ticks));
  }
}
