package castwell.analysis.reading;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.util.ArrayList;
import java.util.List;

/**
 * Cuts a stream of edges to clusters that are read together, by the board's ticks alone. No arrow
 * is cut in two: both gates are clear inside one for less than the quiet time. Gate B alone never
 * waits for gate A, so what an insect did in B isn't the next arrow's.
 */
public record ClusterCut(double spacingM, Limits limits) {

  /** How long gate A alone waits for gate B, so that slow objects have a name. */
  public static final double A_ALONE_S = 0.25;

  /** The longest cluster; what goes on is cut into pieces. */
  public static final double LONGEST_S = 1.0;

  private static final double LEAST_QUIET_S = 0.010;

  /** Room for bounces and for an arrow that is a little slower. */
  private static final double SPARE_S = 0.003;

  /** How long both gates must stay clear for a cluster to be closed. */
  public double quietS() {
    return Math.max(LEAST_QUIET_S, clearInsideS());
  }

  /** For how long both gates may be clear inside an arrow, with room to spare. */
  public double clearInsideS() {
    double clear = Math.max(0, spacingM - limits.shortestM()) / limits.slowestMps();
    return Math.min(LONGEST_S, clear + SPARE_S);
  }

  /** How long a gate that the cluster blocked may stay blocked. */
  public double stayS() {
    return Math.min(LONGEST_S, (spacingM + limits.longestM()) / limits.slowestMps());
  }

  /**
   * A cluster as far as it has come.
   *
   * @param aBlocked whether gate A was blocked by it, and still is
   * @param bBlocked likewise of gate B
   * @param aAlone whether gate A alone saw something, and is clear again
   */
  public record Open(
      long firstTicks, long lastTicks, boolean aBlocked, boolean bBlocked, boolean aAlone) {

    public static Open begin(Edge edge) {
      return new Open(edge.ticks(), edge.ticks(), false, false, true).with(edge);
    }

    public Open with(Edge edge) {
      boolean told = edge.kind() != EdgeKind.MERGED;
      boolean blocked = edge.kind() == EdgeKind.BLOCKED;
      boolean atA = edge.gate() == Gate.A;
      return new Open(
          firstTicks,
          edge.ticks(),
          told && atA ? blocked : aBlocked,
          told && !atA ? blocked : bBlocked,
          aAlone && atA);
    }

    private boolean isBlocked() {
      return aBlocked || bBlocked;
    }
  }

  /** For how many seconds after its last edge anything more belongs to the cluster. */
  public double waitS(Open cluster) {
    return cluster.isBlocked() ? stayS() : quietS();
  }

  /** How many seconds after its last edge the cluster can be closed, if nothing came. */
  public double closesAfterS(Open cluster) {
    return isWaitingForB(cluster) ? Math.max(A_ALONE_S, waitS(cluster)) : waitS(cluster);
  }

  private static boolean isWaitingForB(Open cluster) {
    return cluster.aAlone && !cluster.isBlocked();
  }

  /** Whether the edge that came next belongs to the cluster. */
  public boolean joins(Open cluster, Edge next, double hz) {
    double gap = (next.ticks() - cluster.lastTicks) / hz;
    boolean near =
        gap <= waitS(cluster)
            || isWaitingForB(cluster) && next.gate() == Gate.B && gap <= A_ALONE_S;
    return near && (next.ticks() - cluster.firstTicks) / hz <= LONGEST_S;
  }

  /**
   * All clusters of a stream.
   *
   * @param edges in the order in which they were stamped
   */
  public List<List<Edge>> cut(Iterable<Edge> edges, double hz) {
    List<List<Edge>> clusters = new ArrayList<>();
    Open open = null;
    for (Edge edge : edges) {
      if (open != null && joins(open, edge, hz)) {
        open = open.with(edge);
      } else {
        clusters.add(new ArrayList<>());
        open = Open.begin(edge);
      }
      clusters.get(clusters.size() - 1).add(edge);
    }
    return clusters;
  }
}
