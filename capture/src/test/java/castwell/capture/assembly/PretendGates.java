package castwell.capture.assembly;

import castwell.analysis.reading.Limits;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.StampLatency;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** Two gates 0.61 m apart and a board that numbers what they see: the truth of a test. */
final class PretendGates {
  static final double HZ = 2_000_000;
  private static final double SPACING_M = 0.6096;
  static final Gates GATES =
      new Gates(
          new Calibration(SPACING_M, 0.0003, 0.001, 2, Oscillator.CRYSTAL),
          Limits.defaults(),
          StampLatency.NONE,
          HZ);
  private static final double LENGTH_M = 0.74;
  private static final double SPEED_MPS = 50;

  private int count;

  /** One change of one gate before the board numbers it. */
  private record Seen(Gate gate, EdgeKind kind, double seconds) {}

  int count() {
    return count;
  }

  List<Stamp> arrow(double seconds) {
    return object(seconds, SPEED_MPS, LENGTH_M);
  }

  List<Stamp> object(double seconds, double speedMps, double lengthM) {
    return number(crossing(seconds, speedMps, lengthM));
  }

  /**
   * An arrow some of whose edges the gates never saw.
   *
   * @param places 0 to 3 in the order A blocked, B blocked, A clear, B clear
   */
  List<Stamp> arrowUnseenAt(double seconds, Integer... places) {
    Set<Integer> unseen = Set.copyOf(Arrays.asList(places));
    List<Seen> seen = new ArrayList<>();
    List<Seen> all = crossing(seconds, SPEED_MPS, LENGTH_M);
    for (int place = 0; place < all.size(); place++) {
      if (!unseen.contains(place)) {
        seen.add(all.get(place));
      }
    }
    return number(seen);
  }

  /** An arrow whose tail flutters at both gates: clear, blocked, clear within 2 ms. */
  List<Stamp> flutteringArrow(double seconds) {
    List<Seen> seen = new ArrayList<>(crossing(seconds, SPEED_MPS, LENGTH_M));
    for (Seen tail : List.copyOf(seen.subList(2, 4))) {
      seen.add(new Seen(tail.gate(), EdgeKind.CLEAR, tail.seconds() - 0.0015));
      seen.add(new Seen(tail.gate(), EdgeKind.BLOCKED, tail.seconds() - 0.0008));
    }
    return number(seen);
  }

  /** An arrow one of whose edges fell together with another: one stamp of kind G. */
  List<Stamp> arrowMergedAt(double seconds, int place) {
    List<Seen> seen = new ArrayList<>(crossing(seconds, SPEED_MPS, LENGTH_M));
    Seen old = seen.get(place);
    seen.set(place, new Seen(old.gate(), EdgeKind.MERGED, old.seconds()));
    return number(seen);
  }

  /** Something that reaches gate B first. */
  List<Stamp> backwards(double seconds) {
    return number(
        crossing(seconds, SPEED_MPS, LENGTH_M).stream()
            .map(
                seen ->
                    new Seen(seen.gate() == Gate.A ? Gate.B : Gate.A, seen.kind(), seen.seconds()))
            .toList());
  }

  /** A single change of one gate. */
  Stamp single(double seconds, Gate gate, EdgeKind kind) {
    return number(List.of(new Seen(gate, kind, seconds))).get(0);
  }

  private static List<Seen> crossing(double seconds, double speedMps, double lengthM) {
    return List.of(
        new Seen(Gate.A, EdgeKind.BLOCKED, seconds),
        new Seen(Gate.B, EdgeKind.BLOCKED, seconds + SPACING_M / speedMps),
        new Seen(Gate.A, EdgeKind.CLEAR, seconds + lengthM / speedMps),
        new Seen(Gate.B, EdgeKind.CLEAR, seconds + (SPACING_M + lengthM) / speedMps));
  }

  private List<Stamp> number(List<Seen> seen) {
    return seen.stream()
        .sorted(Comparator.comparingDouble(Seen::seconds))
        .map(s -> new Stamp(++count, s.gate(), s.kind(), Math.round(s.seconds() * HZ)))
        .toList();
  }
}
