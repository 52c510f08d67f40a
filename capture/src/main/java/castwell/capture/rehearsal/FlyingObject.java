package castwell.capture.rehearsal;

import static castwell.analysis.shot.EdgeKind.BLOCKED;
import static castwell.analysis.shot.EdgeKind.CLEAR;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.rehearsal.Happening.Beam;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * An object that flies through both gates at a steady speed.
 *
 * @param frontMicros when its front reaches gate A
 */
record FlyingObject(double frontMicros, double speedMps, double lengthM) {
  /** The standard deviation of the place along the flight at which a gate triggers. */
  private static final double TRIGGER_SCATTER_M = 0.0004;

  /** When a point of the object, at this distance behind its front, passes a gate. */
  double micros(Gate gate, double behindFrontM) {
    double gateM = gate == Gate.A ? 0 : RehearsalSettings.GATE_SPACING_M;
    return frontMicros + (gateM + behindFrontM) / speedMps * 1e6;
  }

  /** The edges of front and tail at both gates. */
  List<Beam> beams(Random scatter) {
    List<Beam> beams = new ArrayList<>();
    for (Gate gate : Gate.values()) {
      beams.add(beam(gate, BLOCKED, 0, scatter));
      beams.add(beam(gate, CLEAR, lengthM, scatter));
    }
    return beams;
  }

  Beam beam(Gate gate, EdgeKind kind, double behindFrontM, Random scatter) {
    double offM = scatter.nextGaussian() * TRIGGER_SCATTER_M;
    return new Beam(micros(gate, behindFrontM + offM), gate, kind);
  }
}
