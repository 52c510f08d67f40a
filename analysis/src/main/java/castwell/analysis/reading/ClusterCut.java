package castwell.analysis.reading;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;

/**
 * Cuts a stream of edges to clusters that are read together, by the board's ticks alone. No arrow
 * is cut in two: both gates are clear inside one for less than the quiet time. Gate B alone never
 * waits for gate A, so what an insect did in B isn't the next arrow's.
 *
 * @param leastQuietS the least silence that closes what both gates have let go
 */
public record ClusterCut(double spacingM, Limits limits, double leastQuietS) {

  /** How long gate A alone waits for gate B, so that slow objects have a name. */
  public static final double A_ALONE_S = 0.25;

  /** The longest cluster; what goes on is cut into pieces. */
  public static final double LONGEST_S = 1.0;

  /** How long an object may block a gate in silence: so long does an arrow at 3 m/s. */
  private static final double STAY_S = 0.2;

  /** The silence that usually closes a cluster. */
  public static final double USUAL_QUIET_S = 0.010;

  /** Room for bounces and for an arrow that is a little slower. */
  private static final double SPARE_S = 0.003;

  /** How long both gates must stay clear for a cluster to be closed. */
  public double quietS() {
    return Math.max(leastQuietS, clearInsideS());
  }

  /** For how long both gates may be clear inside an arrow, with room to spare. */
  private double clearInsideS() {
    double clear = Math.max(0, spacingM - limits.shortestM()) / limits.slowestMps();
    return Math.min(LONGEST_S, clear + SPARE_S);
  }

  /** How long a gate that the cluster blocked may stay blocked. */
  private double stayS() {
    double slowest = (spacingM + limits.longestM()) / limits.slowestMps();
    return Math.min(LONGEST_S, Math.max(quietS(), Math.max(STAY_S, slowest)));
  }

  /**
   * A cluster as far as it has come.
   *
   * @param aBlocked whether gate A was blocked by it, and still is as far as is known: two edges in
   *     one stamp may leave it so
   * @param bBlocked likewise of gate B
   * @param aAlone whether gate A alone saw something
   */
  public record Open(
      long firstTicks, long lastTicks, boolean aBlocked, boolean bBlocked, boolean aAlone) {

    public static Open begin(Edge edge) {
      return new Open(edge.ticks(), edge.ticks(), false, false, true).with(edge);
    }

    public Open with(Edge edge) {
      boolean blocked = edge.kind() != EdgeKind.CLEAR;
      boolean atA = edge.gate() == Gate.A;
      return new Open(
          firstTicks,
          Math.max(lastTicks, edge.ticks()),
          atA ? blocked : aBlocked,
          atA ? bBlocked : blocked,
          aAlone && atA);
    }

    public boolean isBlocked(Gate gate) {
      return gate == Gate.A ? aBlocked : bBlocked;
    }

    private boolean isBlocked() {
      return aBlocked || bBlocked;
    }
  }

  /** For how many seconds after its last edge any edge belongs to the cluster. */
  private double waitS(Open cluster) {
    if (!cluster.isBlocked()) {
      return quietS();
    }
    return cluster.aAlone ? Math.max(A_ALONE_S, stayS()) : stayS();
  }

  /** How many seconds after its last edge the cluster can be closed, if nothing came. */
  public double closesAfterS(Open cluster) {
    return cluster.aAlone ? Math.max(A_ALONE_S, waitS(cluster)) : waitS(cluster);
  }

  private static boolean isWaitingForB(Open cluster) {
    return cluster.aAlone && !cluster.isBlocked();
  }

  /** Whether the edge that came next belongs to the cluster. */
  public boolean joins(Open cluster, Edge next, double hz) {
    double gap = Math.abs(next.ticks() - cluster.lastTicks) / hz;
    boolean near =
        gap <= waitS(cluster)
            || isWaitingForB(cluster) && next.gate() == Gate.B && gap <= A_ALONE_S;
    return near && (next.ticks() - cluster.firstTicks) / hz <= LONGEST_S;
  }
}
