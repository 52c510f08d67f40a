package castwell.analysis.reading;

import castwell.analysis.reading.Scene.Passing;
import castwell.analysis.reading.Scene.Told;
import castwell.analysis.shot.Gate;
import java.util.List;

/** Arrows whose speed the edges don't tell, or not surely. */
final class SpoiltArrows {
  static final List<Disturbance> ALL =
      List.of(
          Disturbance.of("insect hides a front", SpoiltArrows::insectHidesFront),
          Disturbance.of("insect sits in a gate", SpoiltArrows::insectSits),
          Disturbance.of("an edge is missing", SpoiltArrows::missing),
          Disturbance.of("a line is lost", SpoiltArrows::lineLost),
          Disturbance.of("merged front or tail", SpoiltArrows::merged),
          Disturbance.of("stuck in the butt", SpoiltArrows::stuck),
          Disturbance.of("two overlap, tagged", SpoiltArrows::twoOverlap));

  private SpoiltArrows() {}

  private static void insectHidesFront(Scene s) {
    Passing arrow = s.arrow(Told.PERHAPS);
    Gate gate = s.gate();
    double before = s.uniform(0.003, 0.3);
    s.block(gate, arrow.front(gate) - before, before + 0.002);
  }

  private static void insectSits(Scene s) {
    s.arrow(Told.PERHAPS);
    s.block(s.gate(), -s.uniform(0.02, 3), 6);
  }

  private static void missing(Scene s) {
    Passing arrow = s.arrow(Told.NOT_AT_ALL);
    int end = s.end();
    s.unseen(Gate.values()[end % 2], arrow.end(end));
  }

  private static void lineLost(Scene s) {
    Passing arrow = s.arrow(Told.NOT_AT_ALL);
    int end = s.whole(1, 2);
    s.lineLost(Gate.values()[end % 2], arrow.end(end));
  }

  private static void merged(Scene s) {
    Passing arrow = s.arrow(Told.NOT_AT_ALL);
    int end = s.end();
    s.mergedStamp(Gate.values()[end % 2], arrow.end(end));
  }

  private static void stuck(Scene s) {
    Passing arrow = s.arrow(Told.NOT_AT_ALL);
    s.stick(Gate.B, arrow.frontB(), 9);
  }

  private static void twoOverlap(Scene s) {
    double v = s.uniform(40, 70);
    double length = s.uniform(0.65, 0.85);
    double behind = s.uniform(0.2, 0.95) * length / v;
    s.arrow(0, v, length, Told.NOT_AT_ALL, new double[4], 1);
    s.arrow(behind, v, length, Told.NOT_AT_ALL, new double[4], 1);
    s.forgetShots();
    s.tag(length);
  }
}
