package castwell.analysis.reading;

import castwell.analysis.reading.Scene.Passing;
import castwell.analysis.reading.Scene.Told;
import castwell.analysis.shot.Gate;
import java.util.List;

/** Arrows that the edges tell, whatever else there is. */
final class DisturbedArrows {
  static final List<Disturbance> ALL =
      List.of(
          Disturbance.of("nothing", Scene::arrow),
          Disturbance.of("insect before", DisturbedArrows::insectBefore),
          Disturbance.of("insect after", DisturbedArrows::insectAfter),
          Disturbance.of("insect on a front, up to 40 mm", DisturbedArrows::insectOnFront),
          Disturbance.of("insect on a tail, up to 40 mm", DisturbedArrows::insectOnTail),
          Disturbance.of("flutter at one gate", s -> flutter(s, s.arrow(), s.gate(), 1, 3)),
          Disturbance.of("flutter at both gates", DisturbedArrows::flutterAtBoth),
          Disturbance.of("flutter, 6 to 12 gaps", s -> flutter(s, s.arrow(), s.gate(), 6, 12)),
          Disturbance.of("bounce at one edge", s -> bounce(s, s.arrow(), s.end())),
          Disturbance.of("bounce at all four", DisturbedArrows::bounceAtAll),
          Disturbance.of("light through the nock at one gate", s -> nock(s, s.uniform(4, 40))),
          Disturbance.of("light through the nock at both", DisturbedArrows::nockAtBoth),
          Disturbance.of("light through, 150 to 300 mm", DisturbedArrows::lightThrough),
          Disturbance.of("one edge off, 2 to 30 mm", DisturbedArrows::edgeOff),
          Disturbance.of("nick at one gate, 3 to 10 mm", DisturbedArrows::nick),
          Disturbance.of("butt near, 0.5 to 3 %", s -> butt(s, s.uniform(0.005, 0.03))),
          Disturbance.of("late stamps", DisturbedArrows::lateStamps),
          Disturbance.of("two arrows, up to 300 ms apart", DisturbedArrows::twoArrows),
          Disturbance.of("falls back into gate B", DisturbedArrows::fallsBack),
          Disturbance.of("comes back through both gates", DisturbedArrows::comesBack),
          Disturbance.of("lamp dips before", DisturbedArrows::dipBefore),
          Disturbance.of("gate blocked for 9 s, then free", DisturbedArrows::sitsThenGoes),
          Disturbance.of("merged stamp in the flutter", DisturbedArrows::mergedInFlutter));

  private static final double FLUTTERS_M = 0.15;

  private DisturbedArrows() {}

  private static void insectBefore(Scene s) {
    Passing arrow = s.arrow();
    Gate gate = s.gate();
    double lasts = s.magnitude(-3.5, -1.3);
    s.block(gate, arrow.front(gate) - s.magnitude(-4, -0.6) - lasts, lasts);
  }

  private static void insectAfter(Scene s) {
    Passing arrow = s.arrow();
    Gate gate = s.gate();
    s.block(gate, arrow.tail(gate) + s.magnitude(-4, -1), s.magnitude(-3.5, -1.3));
  }

  private static void insectOnFront(Scene s) {
    Passing arrow = s.arrow();
    Gate gate = s.gate();
    double seconds = s.uniform(0.001, 0.04) / arrow.v();
    s.block(gate, arrow.front(gate) - seconds, seconds + 0.001);
  }

  private static void insectOnTail(Scene s) {
    Passing arrow = s.arrow();
    Gate gate = s.gate();
    s.block(gate, arrow.tail(gate) - 0.001, s.uniform(0.001, 0.04) / arrow.v() + 0.001);
  }

  static void flutter(Scene s, Passing arrow, Gate gate, int fewest, int most) {
    int times = s.whole(fewest, most);
    for (int i = 0; i < times; i++) {
      double before = s.uniform(0.01, FLUTTERS_M) / arrow.v();
      double lasts = Math.min(s.uniform(0.05e-3, 0.8e-3), before * 0.9);
      s.light(gate, arrow.tail(gate) - before, lasts);
    }
  }

  private static void flutterAtBoth(Scene s) {
    Passing arrow = s.arrow();
    flutter(s, arrow, Gate.A, 1, 3);
    flutter(s, arrow, Gate.B, 1, 3);
  }

  static void bounce(Scene s, Passing arrow, int end) {
    double begins = arrow.end(end) + s.magnitude(-4.7, -2.9);
    double lasts = s.magnitude(-4.7, -3.2);
    Gate gate = Gate.values()[end % 2];
    if (end < 2) {
      s.light(gate, begins, lasts);
    } else {
      s.block(gate, begins, lasts);
    }
  }

  private static void bounceAtAll(Scene s) {
    Passing arrow = s.arrow();
    for (int end = 0; end < 4; end++) {
      bounce(s, arrow, end);
    }
  }

  private static double[] off(int end, double metres) {
    double[] off = new double[4];
    off[end] = metres;
    return off;
  }

  static Passing nock(Scene s, double millimetres) {
    return s.arrow(Told.PLAINLY, off(s.whole(2, 3), -millimetres / 1e3), 1);
  }

  private static void nockAtBoth(Scene s) {
    double metres = -s.uniform(0.004, 0.04);
    s.arrow(Told.PLAINLY, new double[] {0, 0, metres, metres}, 1);
  }

  private static void lightThrough(Scene s) {
    Passing arrow = s.arrow();
    Gate gate = s.gate();
    double before = s.uniform(0.15, 0.3) / arrow.v();
    s.light(gate, arrow.tail(gate) - before, s.uniform(0.002, 0.02) / arrow.v());
  }

  private static void edgeOff(Scene s) {
    double metres = s.uniform(0.002, 0.03) * (s.random.nextBoolean() ? 1 : -1);
    s.arrow(Told.PLAINLY, off(s.end(), metres), 1);
  }

  private static void nick(Scene s) {
    int gate = s.whole(0, 1);
    double[] off = off(gate, s.uniform(0.003, 0.01));
    off[gate + 2] = -off[gate];
    s.arrow(Told.PLAINLY, off, 1);
  }

  static Passing butt(Scene s, double slower) {
    return s.arrow(Told.PLAINLY, new double[4], 1 - slower);
  }

  private static void lateStamps(Scene s) {
    s.everyStampIsLate();
    s.arrow();
  }

  static Passing[] twoArrows(Scene s) {
    double v = s.uniform(40, 70);
    double length = s.uniform(0.65, 0.85);
    double second = v * s.uniform(0.97, 1.03);
    double apart = (length + 0.04) / v + Math.abs(Scene.SPACING_M / v - Scene.SPACING_M / second);
    double behind = Math.max(s.uniform(0.004, 0.3), apart + 0.001);
    return new Passing[] {
      s.arrow(0, v, length, Told.PLAINLY, new double[4], 1),
      s.arrow(behind, second, length, Told.PLAINLY, new double[4], 1)
    };
  }

  private static void fallsBack(Scene s) {
    Passing arrow = s.arrow();
    s.block(Gate.B, arrow.tailB() + s.uniform(0.002, 0.08), s.uniform(0.01, 0.4));
  }

  private static void comesBack(Scene s) {
    Passing arrow = s.arrow();
    double at = arrow.tailB() + s.uniform(0.03, 0.4);
    double v = s.uniform(3, 12);
    s.block(Gate.B, at, arrow.length() / v);
    s.block(Gate.A, at + Scene.SPACING_M / v, arrow.length() / v);
  }

  private static void dipBefore(Scene s) {
    Passing arrow = s.arrow();
    double lasts = s.uniform(0.005, 0.05);
    double from = arrow.frontA() - s.magnitude(-3.5, -1) - lasts;
    s.block(Gate.A, from, lasts);
    s.block(Gate.B, from + s.uniform(-0.001, 0.001), lasts);
  }

  private static void sitsThenGoes(Scene s) {
    Passing arrow = s.arrow();
    Gate gate = s.gate();
    s.blockedFromTheStart(gate);
    s.block(gate, -9, 9 + arrow.front(gate) - s.magnitude(-4, -1));
  }

  private static void mergedInFlutter(Scene s) {
    Passing arrow = s.arrow();
    Gate gate = s.gate();
    s.light(gate, arrow.tail(gate) - s.uniform(0.01, 0.1) / arrow.v(), 2e-6);
  }
}
