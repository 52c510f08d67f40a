package castwell.analysis.reading;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import java.util.Comparator;
import java.util.List;

/**
 * One gate's edges in the order of their times. A stamp is late by anything from 0 to its bound, so
 * half of that is taken off, and the rectangle's variance kept (JCGM 100:2008, 4.3.7).
 */
final class GateEdges {
  final List<Edge> edges;

  /** When each was, in seconds from an origin that both gates share. */
  final double[] seconds;

  /** The variance of each time, in seconds squared. */
  final double[] variance;

  final boolean[] blocked;
  final boolean[] merged;

  GateEdges(Passage passage, Gate gate, TickRate rate, StampLatency latency) {
    long origin = passage.edges().isEmpty() ? 0 : passage.edges().get(0).ticks();
    edges =
        passage.edges().stream()
            .filter(edge -> edge.gate() == gate)
            .sorted(Comparator.comparingDouble(GateEdges::ticks).thenComparingInt(Edge::number))
            .toList();
    seconds = new double[edges.size()];
    variance = new double[edges.size()];
    blocked = new boolean[edges.size()];
    merged = new boolean[edges.size()];
    for (int i = 0; i < edges.size(); i++) {
      Edge edge = edges.get(i);
      double late = edge.lateTicks();
      seconds[i] = (edge.ticks() - origin - late / 2) / rate.hz() - latency.seconds(gate);
      variance[i] = (1 + late * late) / 12 / (rate.hz() * rate.hz());
      blocked[i] = edge.kind() == EdgeKind.BLOCKED;
      merged[i] = edge.kind() == EdgeKind.MERGED;
    }
  }

  private static double ticks(Edge edge) {
    return edge.ticks() - edge.lateTicks() / 2.0;
  }

  int count() {
    return edges.size();
  }

  boolean isClear(int i) {
    return !blocked[i] && !merged[i];
  }

  /** Whether the gate was blocked with this edge and cleared with the next. */
  boolean isRun(int i) {
    return i + 1 < count() && blocked[i] && isClear(i + 1);
  }

  double runSeconds(int i) {
    return seconds[i + 1] - seconds[i];
  }

  int runs() {
    int runs = 0;
    for (int i = 0; i < count(); i++) {
      runs += isRun(i) ? 1 : 0;
    }
    return runs;
  }

  /** Whether these are too many to seek a story. */
  boolean isFlood() {
    int fronts = 0;
    int pairs = 0;
    for (int i = 0; i < count(); i++) {
      fronts += blocked[i] ? 1 : 0;
      pairs += isClear(i) ? fronts : 0;
    }
    return count() > Assumed.MOST_EDGES || pairs > Assumed.MOST_PAIRS;
  }
}
