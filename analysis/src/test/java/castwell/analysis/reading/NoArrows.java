package castwell.analysis.reading;

import castwell.analysis.shot.Gate;
import java.util.List;
import java.util.Random;

/** What blocks the gates and is no arrow. */
final class NoArrows {
  static final List<Disturbance> ALL =
      List.of(
          Disturbance.of("no arrow: an insect", s -> insect(s, s.gate(), 0, -3.5, -0.5)),
          Disturbance.of("no arrow: insects in both gates", NoArrows::insectsInBoth),
          new Disturbance("no arrow: insects as long as arrows", true, NoArrows::insectsLikeArrows),
          Disturbance.of("no arrow: swarm", NoArrows::swarm),
          Disturbance.of(
              "no arrow: ball", s -> s.object(s.uniform(12, 45), s.uniform(0.04, 0.12), 0)),
          Disturbance.of(
              "no arrow: short stick", s -> s.object(s.uniform(21, 60), s.uniform(0.15, 0.47), 0)),
          Disturbance.of(
              "no arrow: long stick", s -> s.object(s.uniform(21, 60), s.uniform(1.05, 2), 0)),
          Disturbance.of(
              "no arrow: slow", s -> s.object(s.uniform(1.5, 19), s.uniform(0.05, 1), 0)),
          Disturbance.of("no arrow: two balls", NoArrows::twoBalls),
          Disturbance.of("no arrow: backwards", NoArrows::backwards),
          Disturbance.of("no arrow: lamp", NoArrows::lamp),
          Disturbance.of("no arrow: lamp at one gate", NoArrows::lampAtOneGate),
          Disturbance.of("no arrow: nested dip", NoArrows::nestedDip),
          Disturbance.of("no arrow: dip at both gates", NoArrows::dipAtBoth),
          Disturbance.of("no arrow: hail", NoArrows::hail),
          Disturbance.of("no arrow: insect through both", NoArrows::crossing),
          Disturbance.of("no arrow: hands", NoArrows::hands));

  private NoArrows() {}

  private static void insect(Scene s, Gate gate, double from, double power, double toPower) {
    s.block(gate, from, s.magnitude(power, toPower));
  }

  private static void insectsInBoth(Scene s) {
    insect(s, Gate.A, 0, -3.5, -1);
    insect(s, Gate.B, s.uniform(-0.02, 0.08), -3.5, -1);
  }

  private static void insectsLikeArrows(Scene s) {
    s.block(Gate.A, 0, s.uniform(0.008, 0.025));
    s.block(Gate.B, s.uniform(0.003, 0.03), s.uniform(0.008, 0.025));
  }

  private static void swarm(Scene s) {
    for (int i = s.whole(4, 14); i > 0; i--) {
      insect(s, s.gate(), s.uniform(0, 0.3), -3.5, -1.5);
    }
  }

  private static void twoBalls(Scene s) {
    double v = s.uniform(20, 45);
    s.object(v, s.uniform(0.04, 0.25), 0);
    s.object(v * s.uniform(0.95, 1.05), s.uniform(0.04, 0.25), s.uniform(0.3, 0.8) / v);
  }

  private static void backwards(Scene s) {
    double v = s.uniform(3, 60);
    double seconds = s.uniform(0.3, 0.9) / v;
    s.block(Gate.B, 0, seconds);
    s.block(Gate.A, Scene.SPACING_M / v, seconds);
  }

  private static double period(Random random) {
    return random.nextBoolean() ? 1 / 100.0 : 1 / 120.0;
  }

  private static void lamp(Scene s) {
    double period = period(s.random);
    double lasts = s.uniform(0.1, 0.9) * period;
    double phase = s.uniform(0, period);
    double lastsAtB = Math.min(lasts * s.uniform(0.9, 1.1), period * 0.95);
    for (int i = s.whole(3, 40) - 1; i >= 0; i--) {
      s.block(Gate.A, i * period + jitter(s), lasts + jitter(s));
      s.block(Gate.B, i * period + phase + jitter(s), lastsAtB + jitter(s));
    }
  }

  private static void lampAtOneGate(Scene s) {
    double period = period(s.random);
    double lasts = s.uniform(0.1, 0.9) * period;
    Gate gate = s.gate();
    for (int i = s.whole(3, 40) - 1; i >= 0; i--) {
      s.block(gate, i * period + jitter(s), lasts);
    }
  }

  private static double jitter(Scene s) {
    return s.random.nextGaussian() * 5e-5;
  }

  private static void nestedDip(Scene s) {
    double lasts = s.uniform(0.005, 0.2);
    double later = s.uniform(0, 0.45) * lasts;
    Gate outer = s.gate();
    Gate inner = outer == Gate.A ? Gate.B : Gate.A;
    s.block(outer, 0, lasts);
    s.block(inner, later, lasts - later - s.uniform(0.02, 0.5) * lasts);
  }

  private static void dipAtBoth(Scene s) {
    double lasts = s.uniform(0.005, 0.2);
    s.block(Gate.A, 0, lasts);
    s.block(Gate.B, s.random.nextGaussian() * 0.001, lasts * s.uniform(0.95, 1.05));
  }

  private static void hail(Scene s) {
    for (int i = s.whole(8, 30); i > 0; i--) {
      s.block(s.gate(), s.uniform(0, 0.1), s.uniform(0.0003, 0.004));
    }
  }

  private static void crossing(Scene s) {
    double v = s.uniform(0.5, 6);
    s.object(v, 0.01, 0);
  }

  private static void hands(Scene s) {
    s.block(Gate.A, 0, s.uniform(0.05, 0.5));
    s.block(Gate.B, s.uniform(-0.2, 0.2), s.uniform(0.05, 0.5));
  }
}
