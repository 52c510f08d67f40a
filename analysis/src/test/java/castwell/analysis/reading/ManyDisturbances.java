package castwell.analysis.reading;

import castwell.analysis.reading.Scene.Passing;
import castwell.analysis.shot.Gate;
import java.util.List;

/** Arrows that the edges tell, though several things disturb them at once. */
final class ManyDisturbances {
  static final List<Disturbance> ALL =
      List.of(
          Disturbance.of("insect, flutter and bounce", ManyDisturbances::insectFlutterBounce),
          Disturbance.of("nock and insects in both gates", ManyDisturbances::nockAndInsects),
          Disturbance.of("two arrows and an insect", ManyDisturbances::twoArrowsAndInsect),
          Disturbance.of("butt, flutter and insect", ManyDisturbances::buttFlutterInsect));

  private ManyDisturbances() {}

  /** Before the arrow or after it, clear of it by 0.1 ms at least. */
  private static void insectSomewhere(Scene s, Passing arrow, Gate gate) {
    double lasts = s.magnitude(-3.5, -1.3);
    if (s.random.nextDouble() < 0.7) {
      s.block(gate, arrow.front(gate) - s.magnitude(-4, Math.log10(0.3)) - lasts, lasts);
    } else {
      s.block(gate, arrow.tail(gate) + s.magnitude(-4, -1), lasts);
    }
  }

  private static void insectFlutterBounce(Scene s) {
    Passing arrow = s.arrow();
    insectSomewhere(s, arrow, s.gate());
    DisturbedArrows.flutter(s, arrow, s.gate(), 1, 2);
    DisturbedArrows.bounce(s, arrow, s.end());
  }

  private static void nockAndInsects(Scene s) {
    Passing arrow = DisturbedArrows.nock(s, s.uniform(4, 30));
    insectSomewhere(s, arrow, Gate.A);
    insectSomewhere(s, arrow, Gate.B);
  }

  private static void twoArrowsAndInsect(Scene s) {
    Passing[] arrows = DisturbedArrows.twoArrows(s);
    Gate gate = s.gate();
    double from = arrows[0].tail(gate);
    double to = arrows[1].front(gate);
    double at = s.uniform(from, to);
    double lasts = Math.min(0.002, Math.min(to - at, at - from) * 0.8);
    s.block(gate, at, Math.max(lasts, 2e-5));
  }

  private static void buttFlutterInsect(Scene s) {
    Passing arrow = DisturbedArrows.butt(s, s.uniform(0.005, 0.015));
    DisturbedArrows.flutter(s, arrow, Gate.A, 2, 2);
    DisturbedArrows.flutter(s, arrow, Gate.B, 2, 2);
    insectSomewhere(s, arrow, s.gate());
  }
}
