package castwell.analysis.reading;

import castwell.analysis.reading.Scene.Told;
import castwell.analysis.reading.Trial.Judged;
import castwell.analysis.shot.Gate;
import castwell.analysis.speed.Flight;
import castwell.analysis.verdict.Reason;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;

/**
 * An arrow of 50 m/s and 0.74 m through gates that see sharply, and whatever else the tests add.
 * Its front is at gate A at 0 s.
 */
final class Range {
  static final double MPS = 50;
  static final double LENGTH_M = 0.74;
  static final double FRONT_B_S = Scene.SPACING_M / MPS;
  static final double TAIL_A_S = LENGTH_M / MPS;
  static final double TAIL_B_S = FRONT_B_S + TAIL_A_S;

  private final Scene scene = new Scene(new Random(1), 0);
  private Knowledge knowledge = Knowledge.of(Flight.CALIBRATION, Limits.defaults());

  static Range empty() {
    return new Range();
  }

  static Range withArrow() {
    return withArrow(0, 0, 0, 0);
  }

  /** The arrow's front at A, front at B, tail at A and tail at B are seen so many metres off. */
  static Range withArrow(double... offM) {
    return new Range().arrow(0, offM);
  }

  static double tail(Gate gate) {
    return gate == Gate.A ? TAIL_A_S : TAIL_B_S;
  }

  static double front(Gate gate) {
    return gate == Gate.A ? 0 : FRONT_B_S;
  }

  Range another(double at) {
    return arrow(at, new double[4]);
  }

  private Range arrow(double at, double... offM) {
    scene.arrow(at, MPS, LENGTH_M, Told.PLAINLY, offM, 1);
    return this;
  }

  Range object(double at, double mps, double lengthM) {
    scene.object(mps, lengthM, at);
    return this;
  }

  Range blocked(Gate gate, double fromS, double toS) {
    scene.block(gate, fromS, toS - fromS);
    return this;
  }

  Range light(Gate gate, double fromS, double toS) {
    scene.light(gate, fromS, toS - fromS);
    return this;
  }

  Range tagged(double lengthM) {
    knowledge = knowledge.withTaggedLength(Optional.of(new Known(lengthM, 0.003)));
    return this;
  }

  List<Judged> read() {
    return Trial.read(scene.edges(), knowledge);
  }

  List<Judged> counting() {
    return read().stream().filter(judged -> judged.assessment().verdict().counts()).toList();
  }

  /** The codes of the reasons of all that doesn't count, the first of each. */
  List<String> refused() {
    return read().stream()
        .flatMap(judged -> Stream.of(judged.assessment().verdict().reasons()))
        .filter(reasons -> !reasons.isEmpty())
        .map(reasons -> reasons.get(0))
        .map(Reason::code)
        .toList();
  }
}
