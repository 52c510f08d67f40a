package castwell.capture.rehearsal;

import static castwell.analysis.shot.EdgeKind.BLOCKED;
import static castwell.analysis.shot.EdgeKind.CLEAR;
import static castwell.analysis.shot.EdgeKind.MERGED;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.rehearsal.Happening.Beam;
import castwell.capture.rehearsal.Happening.Fate;
import castwell.capture.rehearsal.Happening.Noise;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** The mishaps that go with an arrow now and then. */
enum Mishap {
  NONE,
  FRONT_UNSEEN,
  EDGES_MERGED,
  FLUTTER,
  LINE_LOST,
  LINE_CORRUPTED,
  LINE_REPEATED,
  GARBAGE,
  INSECT,
  ONE_GATE_ONLY,
  FLOOD;

  /**
   * Everything that happens with one arrow and after it.
   *
   * @param afterMicros when those things happen that aren't the arrow's own
   */
  List<Happening> with(FlyingObject arrow, double afterMicros, Random random) {
    List<Beam> beams = arrow.beams(random);
    int any = random.nextInt(beams.size());
    List<Happening> all = new ArrayList<>();
    switch (this) {
      case NONE -> {}
      case FRONT_UNSEEN -> beams.removeIf(beam -> beam.gate() == Gate.A && beam.kind() == BLOCKED);
      case EDGES_MERGED -> replace(beams, Gate.B, BLOCKED, MERGED);
      case FLUTTER -> all.addAll(flutter(arrow, random));
      case LINE_LOST -> beams.set(any, beams.get(any).with(Fate.LOST));
      case LINE_CORRUPTED -> beams.set(any, beams.get(any).with(Fate.CORRUPTED));
      case LINE_REPEATED -> beams.set(any, beams.get(any).with(Fate.REPEATED));
      case GARBAGE -> all.add(garbage(afterMicros, random));
      case INSECT ->
          all.addAll(
              new FlyingObject(afterMicros, 25 + 10 * random.nextDouble(), 0.014).beams(random));
      case ONE_GATE_ONLY -> all.addAll(flicker(afterMicros, 1, 5000));
      case FLOOD -> all.addAll(flicker(afterMicros, 60, 1000));
    }
    all.addAll(beams);
    return all;
  }

  private static void replace(List<Beam> beams, Gate gate, EdgeKind kind, EdgeKind by) {
    beams.replaceAll(
        beam ->
            beam.gate() == gate && beam.kind() == kind ? new Beam(beam.micros(), gate, by) : beam);
  }

  /** Feathers let the light through for a moment, up to three times before the tail. */
  private static List<Beam> flutter(FlyingObject arrow, Random random) {
    List<Beam> beams = new ArrayList<>();
    for (Gate gate : Gate.values()) {
      int times = 1 + random.nextInt(3);
      for (int i = 0; i < times; i++) {
        double behindFrontM = arrow.lengthM() - 0.03 - 0.02 * i;
        beams.add(arrow.beam(gate, CLEAR, behindFrontM - 0.007, random));
        beams.add(arrow.beam(gate, BLOCKED, behindFrontM, random));
      }
    }
    return beams;
  }

  private static Noise garbage(double micros, Random random) {
    byte[] bytes = new byte[20 + random.nextInt(60)];
    random.nextBytes(bytes);
    bytes[bytes.length - 1] = '\n';
    return new Noise(micros, bytes);
  }

  private static List<Beam> flicker(double fromMicros, int times, double apartMicros) {
    List<Beam> beams = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      double micros = fromMicros + 2 * i * apartMicros;
      beams.add(new Beam(micros, Gate.A, BLOCKED));
      beams.add(new Beam(micros + apartMicros, Gate.A, CLEAR));
    }
    return beams;
  }
}
