package castwell.capture.health;

import castwell.analysis.gates.GateFindings;
import castwell.analysis.gates.GateShot;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.TickRate;
import castwell.analysis.wording.Phrase;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.station.FaultCounts;
import castwell.capture.station.LinkState;
import castwell.capture.station.LinkState.State;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
import castwell.capture.wire.Fault;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Levels;
import castwell.capture.wire.Sentence.Surroundings;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** A station whose every part is well, until a test makes one otherwise. */
final class Station {
  static final Instant NOON = Instant.parse("2026-05-02T12:00:00Z");
  static final int LIGHT_A = 812;
  static final int LIGHT_B = 805;
  static final int MV = 5010;
  private static final long SECOND = 2_000_000;
  private static final Levels CLEAR = new Levels(false, false);

  private final List<HeardBeat> beats = new ArrayList<>();
  private final List<HeardBeat> earlier = new ArrayList<>();
  private final Map<Fault, Long> faults = new EnumMap<>(Fault.class);
  private Optional<LinkState> link = Optional.empty();
  private Optional<StoreState> store =
      Optional.of(new StoreState("range", Optional.empty(), NOON, 0, false));
  private Optional<BrokerState> broker = Optional.empty();
  private Optional<BoardRate> rate = Optional.empty();
  private Optional<GateFindings> gates = Optional.empty();
  private boolean isSpacingMeasured = true;
  private Duration over = Duration.ofHours(2);
  private long ticks = 100 * SECOND;

  static Station well() {
    Station station = new Station().link(State.ONLINE).clock(Oscillator.RESONATOR, 0.0017, 3e-5);
    for (int i = 0; i < 60; i++) {
      station.beat(LIGHT_A + i % 3 - 1, LIGHT_B + i % 3 - 1, MV, CLEAR);
    }
    for (int i = 0; i < 20; i++) {
      station.earlier(LIGHT_A + i % 5 - 2, LIGHT_B + i % 5 - 2, MV + i % 7 - 3);
    }
    return station;
  }

  Station link(State state) {
    link =
        Optional.of(
            new LinkState(
                "range",
                "/dev/ttyACM0",
                state,
                Phrase.asIs("The port /dev/ttyACM0 is " + state + "."),
                Optional.of("gate-1"),
                Optional.empty(),
                NOON.minusSeconds(60)));
    return this;
  }

  Station clock(Oscillator oscillator, double error, double relativeU) {
    TickRate measured = new TickRate(2_000_000 * (1 + error), relativeU);
    rate = Optional.of(new BoardRate("gate-1", 2_000_000, oscillator, Optional.of(measured), 3600));
    return this;
  }

  /** Its session's shots, a minute apart, tell this of front over tail. */
  Station shots(double... residualsM) {
    List<GateShot> shots = new ArrayList<>();
    for (double residual : residualsM) {
      shots.add(new GateShot(60 * shots.size(), 0.74, residual, Optional.empty()));
    }
    gates = GateFindings.of(shots, new Calibration(0.6096, 0.0003, 0.001, 2, Oscillator.RESONATOR));
    return this;
  }

  Station withoutHistory() {
    earlier.clear();
    return this;
  }

  Station withoutBeats() {
    beats.clear();
    return this;
  }

  /** A second after the last; the newest. */
  Station beat(int lightA, int lightB, int mv, Levels levels) {
    beats.add(heard(beats.size(), lightA, lightB, mv, levels, 0, 0, 0));
    return this;
  }

  Station edges(int edges, int merged, int dropped) {
    beats.add(heard(beats.size(), LIGHT_A, LIGHT_B, MV, CLEAR, edges, merged, dropped));
    return this;
  }

  /** Beats are stamped by the board, and don't come. */
  Station miss(int howMany) {
    ticks += howMany * SECOND;
    return this;
  }

  Station earlier(int lightA, int lightB, int mv) {
    earlier.add(heard(-7200, lightA, lightB, mv, CLEAR, 0, 0, 0));
    ticks -= SECOND; // of a run of its own
    return this;
  }

  Station fault(Fault fault, long count) {
    faults.put(fault, count);
    return this;
  }

  Station listenedFor(Duration time) {
    over = time;
    return this;
  }

  Station trouble(String sentence, int waiting) {
    store =
        Optional.of(
            new StoreState("range", Optional.of(Phrase.asIs(sentence)), NOON, waiting, false));
    return this;
  }

  Station broker(boolean connected, long waiting) {
    Phrase sentence =
        Phrase.asIs(connected ? "Connected to mqtt://b." : "mqtt://b doesn't answer.");
    Instant since = NOON.minusSeconds(600);
    broker = Optional.of(new BrokerState("range", connected, sentence, since, waiting, 0));
    return this;
  }

  private HeardBeat heard(
      long second, int a, int b, int mv, Levels levels, int edges, int merged, int dropped) {
    ticks += SECOND;
    Surroundings around =
        new Surroundings(
            OptionalInt.of(a),
            OptionalInt.of(b),
            OptionalInt.of(mv),
            OptionalInt.empty(),
            OptionalInt.empty(),
            OptionalInt.empty());
    Heartbeat beat =
        new Heartbeat(0, 7, ticks, 0, edges, merged, dropped, Optional.of(levels), around, 60);
    return new HeardBeat(NOON.plusSeconds(second), beat);
  }

  Station unmeasured() {
    isSpacingMeasured = false;
    return this;
  }

  Health health() {
    return Checkup.judge(
        new Vitals(
            "range",
            NOON,
            link,
            beats,
            Optional.of(new FaultCounts(faults, faults, over)),
            store,
            broker,
            rate,
            earlier,
            gates,
            isSpacingMeasured));
  }

  Item item(String name) {
    return health().items().stream()
        .filter(item -> item.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no item " + name + " in " + health()));
  }
}
