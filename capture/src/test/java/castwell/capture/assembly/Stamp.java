package castwell.capture.assembly;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;

/**
 * An edge as the board stamped it.
 *
 * @param ticks the full count since the board's start
 */
record Stamp(int number, Gate gate, EdgeKind kind, long ticks) {

  Edge edge() {
    return new Edge(number, gate, kind, ticks, 0);
  }

  long micros() {
    return Math.round(ticks / PretendGates.HZ * 1e6);
  }
}
