package castwell.capture.daemon;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.unit.Units;
import castwell.capture.daemon.Flight.Beam;
import castwell.capture.daemon.PaperWire.Fate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleConsumer;

/**
 * All that may happen at a pair of gates, to their board and on the wire, and what of it is true.
 */
final class Happenings {
  private final BoardOnPaper board;
  private final Random random;
  private final List<Truth> truths = new ArrayList<>();

  Happenings(BoardOnPaper board, Random random) {
    this.board = board;
    this.random = random;
  }

  List<Truth> truths() {
    return truths;
  }

  /** Each begins at an instant. */
  List<DoubleConsumer> all() {
    List<DoubleConsumer> all = new ArrayList<>();
    for (Disturbance disturbance : Disturbance.values()) {
      all.add(at -> passage(flight(at), disturbance, disturbance.toString()));
    }
    all.add(this::twoInARow);
    all.add(at -> misread(new Flight(at, between(3, 19), between(0.02, 0.06)), "too slow"));
    all.add(at -> misread(slowed(flight(at)), "too slow"));
    all.add(at -> misread(new Flight(at, fast(), between(0.03, 0.25)), "too short"));
    all.add(at -> misread(new Flight(at, fast(), between(1.2, 2.5)), "too long"));
    all.add(at -> misread(new Flight(at, between(140, 400), arrowM()), "too fast"));
    all.add(this::jumble);
    all.add(this::lossesOnly);
    all.add(this::chatter);
    all.add(this::restartInTheMiddle);
    all.add(this::restartBetween);
    all.add(this::noiseBefore);
    all.add(this::noiseBetween);
    all.add(this::unknownSentence);
    all.add(this::spoiltBeat);
    all.add(this::wireHeldUp);
    all.add(this::hostBusy);
    return all;
  }

  void clean(double at, String why) {
    passage(flight(at), Disturbance.CLEAN, why);
  }

  private Flight flight(double at) {
    return new Flight(at, fast(), arrowM());
  }

  /** As fast as arrows are. */
  private double fast() {
    return between(110, 250) * Units.METRES_PER_FOOT;
  }

  private double arrowM() {
    return between(0.6, 0.85);
  }

  private static Flight slowed(Flight flight) {
    return new Flight(flight.startSeconds(), flight.mps() / 8, flight.lengthM());
  }

  private void passage(Flight flight, Disturbance disturbance, String why) {
    int first = board.edges() + 1;
    send(disturbance.beams(flight, random));
    truths.add(
        disturbance.countsStill()
            ? flight.shot(board.boot(), first, why)
            : Truth.misread(board.boot(), first, why));
  }

  private void misread(Flight flight, String why) {
    misread(flight.beams(), why);
  }

  private void misread(List<Beam> beams, String why) {
    truths.add(Truth.misread(board.boot(), board.edges() + 1, why));
    send(beams);
  }

  private void send(List<Beam> beams) {
    for (Beam b : beams) {
      board.edge(b.seconds(), b.gate(), b.kind(), b.lateTicks(), b.fate());
    }
  }

  /**
   * One of the two may be in trouble; were both, not even a person could tell which edge is whose.
   */
  private void twoInARow(double at) {
    Disturbance[] all = Disturbance.values();
    Disturbance trouble = all[random.nextInt(all.length)];
    boolean firstInTrouble = random.nextBoolean();
    Flight first = flight(at);
    Flight second = flight(at + between(0.3, 0.9));
    passage(first, firstInTrouble ? trouble : Disturbance.CLEAN, trouble + " before another");
    passage(second, firstInTrouble ? Disturbance.CLEAN : trouble, trouble + " behind another");
  }

  private void jumble(double at) {
    List<Beam> beams = new ArrayList<>();
    for (int i = 6 + random.nextInt(7); i > 0; i--) {
      beams.add(
          Flight.beam(
              at + between(0, 0.01),
              random.nextBoolean() ? Gate.A : Gate.B,
              random.nextBoolean() ? EdgeKind.BLOCKED : EdgeKind.CLEAR));
    }
    Flight.sort(beams);
    misread(beams, "a jumble");
  }

  private void lossesOnly(double at) {
    for (int i = 0; i < 5; i++) {
      board.loss(at + 0.1 * i, Gate.A, at + 0.1 * i - 0.09, 24);
    }
    passage(flight(at + 2), Disturbance.CLEAN, "after a flooded gate");
  }

  /** A gate flickers: its first edges come, then only their count. */
  private void chatter(double at) {
    Gate gate = random.nextBoolean() ? Gate.A : Gate.B;
    List<Beam> beams = new ArrayList<>();
    for (int i = 0; i < 32; i++) {
      EdgeKind kind = i % 2 == 0 ? EdgeKind.BLOCKED : EdgeKind.CLEAR;
      beams.add(Flight.beam(at + 0.003 * i, gate, kind));
    }
    misread(beams, "a gate that flickers");
    board.loss(at + 0.2, gate, at + 0.1, 30);
    passage(flight(at + 1.5), Disturbance.CLEAN, "after a gate that flickered");
  }

  private void restartInTheMiddle(double at) {
    List<Beam> beams = flight(at).beams();
    int came = 1 + random.nextInt(3);
    misread(beams.subList(0, came), "the board restarted in the middle");
    board.restart(beams.get(came - 1).seconds() + between(0.001, 0.02), identityFate());
  }

  private void restartBetween(double at) {
    board.restart(at, identityFate());
    passage(flight(at + between(0.5, 2)), Disturbance.CLEAN, "after a restart");
  }

  private Fate identityFate() {
    return random.nextInt(4) == 0 ? Fate.CORRUPTED : Fate.SENT;
  }

  private void noiseBefore(double at) {
    board.wireAt(at).hear(at, Noise.any(random));
    passage(flight(at + between(0.05, 1)), Disturbance.CLEAN, "after noise");
  }

  private void noiseBetween(double at) {
    Flight flight = flight(at);
    List<Beam> beams = flight.beams();
    int before = 1 + random.nextInt(3);
    truths.add(flight.shot(board.boot(), board.edges() + 1, "noise between"));
    send(beams.subList(0, before));
    board
        .wireAt(beams.get(before - 1).seconds())
        .hear(beams.get(before - 1).seconds(), Noise.any(random));
    send(beams.subList(before, 4));
  }

  private void unknownSentence(double at) {
    board.wireAt(at).say(at, Fate.SENT, "Z", "1,2,3");
    passage(flight(at + between(0.05, 1)), Disturbance.CLEAN, "after an unknown sentence");
  }

  private void wireHeldUp(double at) {
    board.wireAt(at).holdUp(at, between(0.1, 10));
    passage(flight(at + between(0, 2)), Disturbance.CLEAN, "while the wire was held up");
  }

  private void hostBusy(double at) {
    Flight flight = flight(at);
    board.wireAt(at).keepHostBusy(flight.endSeconds(), between(0, 1));
    passage(flight, Disturbance.CLEAN, "while the host was busy");
  }

  private void spoiltBeat(double at) {
    board.spoilNextBeat(random.nextBoolean() ? Fate.LOST : Fate.CORRUPTED);
    passage(flight(at), Disturbance.CLEAN, "near a spoilt heartbeat");
  }

  private double between(double least, double most) {
    return least + (most - least) * random.nextDouble();
  }
}
