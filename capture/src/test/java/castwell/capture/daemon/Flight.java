package castwell.capture.daemon;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.unit.Units;
import castwell.capture.daemon.PaperWire.Fate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One object on its way through gates 0.6096 m apart, and the beams it blocks and clears.
 *
 * @param startSeconds when its front reaches gate A
 */
record Flight(double startSeconds, double mps, double lengthM) {
  static final double SPACING_M = 0.6096;

  /** What becomes of one beam: stamped then, told so. */
  record Beam(double seconds, Gate gate, EdgeKind kind, int lateTicks, Fate fate) {

    Beam as(EdgeKind other) {
      return new Beam(seconds, gate, other, lateTicks, fate);
    }

    Beam faring(Fate other) {
      return new Beam(seconds, gate, kind, lateTicks, other);
    }

    Beam late(double shiftSeconds, int flagTicks) {
      return new Beam(seconds + shiftSeconds, gate, kind, flagTicks, fate);
    }

    Beam atOtherGate() {
      return new Beam(seconds, gate == Gate.A ? Gate.B : Gate.A, kind, lateTicks, fate);
    }
  }

  static Beam beam(double seconds, Gate gate, EdgeKind kind) {
    return new Beam(seconds, gate, kind, 0, Fate.SENT);
  }

  /** When its tail leaves gate B. */
  double endSeconds() {
    return startSeconds + (SPACING_M + lengthM) / mps;
  }

  /** The four beams of a clean passage, in order. */
  List<Beam> beams() {
    List<Beam> beams = new ArrayList<>();
    beams.add(beam(startSeconds, Gate.A, EdgeKind.BLOCKED));
    beams.add(beam(startSeconds + SPACING_M / mps, Gate.B, EdgeKind.BLOCKED));
    beams.add(beam(startSeconds + lengthM / mps, Gate.A, EdgeKind.CLEAR));
    beams.add(beam(endSeconds(), Gate.B, EdgeKind.CLEAR));
    sort(beams);
    return beams;
  }

  static void sort(List<Beam> beams) {
    beams.sort(Comparator.comparingDouble(Beam::seconds));
  }

  Truth shot(int boot, int firstEdge, String why) {
    return new Truth(boot, firstEdge, true, mps / Units.METRES_PER_FOOT, lengthM * 1000, why);
  }
}
