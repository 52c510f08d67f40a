package castwell.analysis.reading;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Separates a cluster in which two arrows flew into a passage for each, with the strays nearest to
 * it. Every edge is in exactly one passage, but what was lost between may be of both.
 */
public final class Separation {
  private static final int FEWEST = 2;
  private final List<ArrowRead> arrows;
  private final List<List<Edge>> edges = List.of(new ArrayList<>(), new ArrayList<>());
  private final List<List<Integer>> lost = List.of(new ArrayList<>(), new ArrayList<>());

  private Separation(List<ArrowRead> arrows) {
    this.arrows = arrows;
  }

  /** The passages in ascending order of their first edges; the cluster itself where it is one. */
  public static List<Passage> separate(
      Passage cluster, Knowledge knowledge, TickRate rate, StampLatency latency) {
    if (!mayHoldTwo(cluster)) {
      return List.of(cluster);
    }
    Reading reading = Reader.read(cluster, knowledge, rate, latency);
    boolean two = reading.arrows().size() == 2;
    return two && reading.arrows().stream().anyMatch(ArrowRead::isSure)
        ? new Separation(reading.arrows()).separate(cluster)
        : List.of(cluster);
  }

  private static boolean mayHoldTwo(Passage cluster) {
    int[] counts = new int[4];
    for (Edge edge : cluster.edges()) {
      if (edge.kind() != EdgeKind.MERGED) {
        counts[2 * edge.gate().ordinal() + (edge.kind() == EdgeKind.BLOCKED ? 0 : 1)]++;
      }
    }
    return counts[0] >= FEWEST && counts[1] >= FEWEST && counts[2] >= FEWEST && counts[3] >= FEWEST;
  }

  private List<Passage> separate(Passage cluster) {
    for (Gate gate : Gate.values()) {
      assign(cluster.edges().stream().filter(e -> e.gate() == gate).toList(), gate);
    }
    edges.forEach(own -> own.sort(Comparator.comparingInt(Edge::number)));
    cluster.lostEdges().forEach(this::assignLost);
    List<Passage> passages = new ArrayList<>();
    for (int i = 0; i < FEWEST; i++) {
      passages.add(
          new Passage(edges.get(i), lost.get(i), cluster.boardRestarted(), cluster.edgesDropped()));
    }
    passages.sort(Comparator.comparingInt(Passage::firstEdge));
    return passages;
  }

  private void assign(List<Edge> atGate, Gate gate) {
    List<Edge> inOrder = new ArrayList<>(atGate);
    inOrder.sort(Comparator.comparingLong(Edge::ticks).thenComparingInt(Edge::number));
    int owner = 0;
    boolean open = false;
    for (Edge edge : inOrder) {
      boolean isEnd = arrows.stream().anyMatch(arrow -> arrow.ends().all().contains(edge));
      // What clears a gate belongs to what blocked it.
      if (isEnd || !open || edge.kind() != EdgeKind.CLEAR) {
        owner = ticksTo(0, edge, gate) <= ticksTo(1, edge, gate) ? 0 : 1;
      }
      open = !isEnd && edge.kind() == EdgeKind.BLOCKED;
      edges.get(owner).add(edge);
    }
  }

  /** How far from an arrow at its gate an edge is; 0 inside of it. */
  private long ticksTo(int arrow, Edge edge, Gate gate) {
    Optional<Edge> front = arrows.get(arrow).ends().front(gate);
    Optional<Edge> tail = arrows.get(arrow).ends().tail(gate);
    long before = front.map(f -> f.ticks() - edge.ticks()).orElse(0L);
    long after = tail.map(t -> edge.ticks() - t.ticks()).orElse(0L);
    return Math.max(0, Math.max(before, after));
  }

  private void assignLost(int number) {
    boolean[] spans = new boolean[FEWEST];
    for (int i = 0; i < FEWEST; i++) {
      spans[i] = distance(i, number) == 0;
    }
    int nearest = distance(0, number) <= distance(1, number) ? 0 : 1;
    for (int i = 0; i < FEWEST; i++) {
      if (spans[i] || i == nearest) {
        lost.get(i).add(number);
      }
    }
  }

  /** By how many numbers an edge is outside of a passage; 0 between its first and its last. */
  private int distance(int passage, int number) {
    List<Edge> own = edges.get(passage);
    int before = own.get(0).number() - number;
    int after = number - own.get(own.size() - 1).number();
    return Math.max(0, Math.max(before, after));
  }
}
