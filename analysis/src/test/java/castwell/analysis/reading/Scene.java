package castwell.analysis.reading;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Gate;
import castwell.analysis.speed.Flight;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * What blocks each gate and when. Lengths are in metres, times in seconds from when the arrow's
 * front should reach gate A.
 */
final class Scene {
  static final double SPACING_M = Flight.SPACING_M;

  private static final double SAME_S = 3e-5;

  /** An arrow as it truly flew, and whether its edges tell that. */
  record Shot(double speedMps, double lengthM, double frontAtA, Told told) {}

  /** What is to be expected of an arrow. */
  enum Told {
    PLAINLY,
    /** It must not count. */
    NOT_AT_ALL,
    /** Nobody can tell; if it counts its error is judged. */
    PERHAPS
  }

  /** When an arrow's ends pass the gates. */
  record Passing(
      double v, double length, double frontA, double frontB, double tailA, double tailB) {
    double front(Gate gate) {
      return gate == Gate.A ? frontA : frontB;
    }

    double tail(Gate gate) {
      return gate == Gate.A ? tailA : tailB;
    }

    double end(int index) {
      return index < 2 ? front(Gate.values()[index]) : tail(Gate.values()[index - 2]);
    }
  }

  /** A stretch of time at one gate. */
  record Span(Gate gate, double from, double to) {
    boolean holds(Gate at, double time) {
      return gate == at && from <= time && time < to;
    }
  }

  final Random random;
  private final double scatterM;
  final List<Span> blocked = new ArrayList<>();
  final List<Span> light = new ArrayList<>();
  final List<Span> unseen = new ArrayList<>();
  final List<Span> lostLines = new ArrayList<>();
  final List<Span> mergedStamps = new ArrayList<>();
  final List<Shot> shots = new ArrayList<>();
  boolean allLate;
  Gate blockedFromTheStart;
  private double taggedM = Double.NaN;

  Scene(Random random, double scatterM) {
    this.random = random;
    this.scatterM = scatterM;
  }

  double uniform(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  /** A number between powers of ten, each as likely. */
  double magnitude(double fromPower, double toPower) {
    return Math.pow(10, uniform(fromPower, toPower));
  }

  int whole(int from, int to) {
    return from + random.nextInt(to - from + 1);
  }

  Gate gate() {
    return Gate.values()[random.nextInt(2)];
  }

  /** One of an arrow's ends, by its index: front at A, front at B, tail at A, tail at B. */
  int end() {
    return random.nextInt(4);
  }

  /** Something blocks a gate from then on, for so long. */
  void block(Gate gate, double from, double seconds) {
    blocked.add(new Span(gate, from, from + seconds));
  }

  /** A gate sees light from then on, for so long, whatever blocks it. */
  void light(Gate gate, double from, double seconds) {
    light.add(new Span(gate, from, from + seconds));
  }

  void object(double v, double length, double at) {
    block(Gate.A, at, length / v);
    block(Gate.B, at + SPACING_M / v, length / v);
  }

  Passing arrow() {
    return arrow(Told.PLAINLY);
  }

  Passing arrow(Told told) {
    return arrow(told, new double[4], 1);
  }

  /**
   * An arrow of any usual speed and length.
   *
   * @param off how far each of its ends is seen from where it is
   * @param slower by which factor the tail is slower between the gates
   */
  Passing arrow(Told told, double[] off, double slower) {
    double v = uniform(30, 75);
    return arrow(0, v, uniform(0.62, 0.86), told, off, slower);
  }

  Passing arrow(double at, double v, double length, Told told, double[] off, double slower) {
    Passing passing =
        new Passing(
            v,
            length,
            at + seen(off[0], v),
            at + SPACING_M / v + seen(off[1], v),
            at + length / v + seen(off[2], v),
            at + length / v + SPACING_M / (v * slower) + seen(off[3], v));
    for (Gate gate : Gate.values()) {
      block(gate, passing.front(gate), passing.tail(gate) - passing.front(gate));
    }
    shots.add(new Shot(v, length, passing.frontA, told));
    return passing;
  }

  private double seen(double off, double v) {
    return (random.nextGaussian() * scatterM + off) / v;
  }

  /** The scene's arrows are none that count. */
  void forgetShots() {
    shots.clear();
  }

  /** Whatever blocked that gate, it is blocked in that time and no other. */
  void stick(Gate gate, double from, double until) {
    blocked.removeIf(span -> span.gate == gate);
    blocked.add(new Span(gate, from, until));
  }

  void tag(double lengthM) {
    taggedM = lengthM;
  }

  double taggedM() {
    return taggedM;
  }

  void everyStampIsLate() {
    allLate = true;
  }

  void blockedFromTheStart(Gate gate) {
    blockedFromTheStart = gate;
  }

  void unseen(Gate gate, double time) {
    unseen.add(around(gate, time));
  }

  void lineLost(Gate gate, double time) {
    lostLines.add(around(gate, time));
  }

  void mergedStamp(Gate gate, double time) {
    mergedStamps.add(around(gate, time));
  }

  private static Span around(Gate gate, double time) {
    return new Span(gate, time - SAME_S, time + SAME_S);
  }

  /** The edges that arrive; its shots' times are then in ticks. */
  List<Edge> edges() {
    return new Stamping(this).edges();
  }
}
