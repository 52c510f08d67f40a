package castwell.analysis.reading;

import castwell.analysis.reading.Scene.Shot;
import castwell.analysis.reading.Scene.Span;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.speed.Flight;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/** The edges that a board with a counter of 2 MHz makes of a scene. */
final class Stamping {
  /** Two edges of one gate that are closer together get one stamp. */
  private static final double MERGED_S = 4e-6;

  /** An edge that comes so soon after another, at either gate, is stamped late. */
  private static final double BUSY_S = 9e-6;

  private static final int LATE_TICKS = 20;
  private static final double LEAD_S = 0.01;

  private record Made(double time, Gate gate, EdgeKind kind, int late) {}

  private final Scene scene;

  Stamping(Scene scene) {
    this.scene = scene;
  }

  private static double ticks(double time, double origin) {
    return (time - origin + LEAD_S) * Flight.HZ;
  }

  List<Edge> edges() {
    List<Made> made = new ArrayList<>();
    for (Gate gate : Gate.values()) {
      made.addAll(stampedTogether(switches(gate)));
    }
    made.sort(Comparator.comparingDouble(Made::time));
    List<Made> stamped = new ArrayList<>();
    double last = -1;
    for (Made edge : made) {
      int late = scene.allLate || edge.time - last < BUSY_S ? LATE_TICKS : 0;
      last = edge.time;
      double time = edge.time + scene.uniform(0, late / Flight.HZ);
      if (!in(scene.unseen, edge.gate, time)) {
        EdgeKind kind = in(scene.mergedStamps, edge.gate, time) ? EdgeKind.MERGED : edge.kind;
        stamped.add(new Made(time, edge.gate, kind, late));
      }
    }
    stamped.sort(Comparator.comparingDouble(Made::time));
    return arriving(stamped);
  }

  private List<Edge> arriving(List<Made> stamped) {
    double origin = stamped.isEmpty() ? 0 : stamped.get(0).time;
    List<Edge> edges = new ArrayList<>();
    for (int i = 0; i < stamped.size(); i++) {
      Made edge = stamped.get(i);
      if (!in(scene.lostLines, edge.gate, edge.time)) {
        long ticks = (long) Math.floor(ticks(edge.time, origin));
        edges.add(new Edge(i + 1, edge.gate, edge.kind, ticks, edge.late));
      }
    }
    scene.shots.replaceAll(
        shot ->
            new Shot(shot.speedMps(), shot.lengthM(), ticks(shot.frontAtA(), origin), shot.told()));
    return edges;
  }

  private List<Made> switches(Gate gate) {
    TreeSet<Double> times = new TreeSet<>();
    for (List<Span> spans : List.of(scene.blocked, scene.light)) {
      spans.stream()
          .filter(s -> s.gate() == gate)
          .forEach(s -> times.addAll(List.of(s.from(), s.to())));
    }
    List<Made> switches = new ArrayList<>();
    boolean was = gate == scene.blockedFromTheStart;
    for (double time : times) {
      Double next = times.higher(time);
      double middle = next == null ? time + 0.5 : (time + next) / 2;
      boolean is = in(scene.blocked, gate, middle) && !in(scene.light, gate, middle);
      if (is != was) {
        switches.add(new Made(time, gate, is ? EdgeKind.BLOCKED : EdgeKind.CLEAR, 0));
      }
      was = is;
    }
    return switches;
  }

  private static List<Made> stampedTogether(List<Made> switches) {
    List<Made> together = new ArrayList<>();
    for (int i = 0; i < switches.size(); i++) {
      Made edge = switches.get(i);
      if (i + 1 < switches.size() && switches.get(i + 1).time - edge.time < MERGED_S) {
        together.add(new Made(edge.time, edge.gate, EdgeKind.MERGED, 0));
        i++;
      } else {
        together.add(edge);
      }
    }
    return together;
  }

  private static boolean in(List<Span> spans, Gate gate, double time) {
    return spans.stream().anyMatch(span -> span.holds(gate, time));
  }
}
