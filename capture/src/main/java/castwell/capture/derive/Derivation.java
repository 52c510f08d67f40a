package castwell.capture.derive;

import castwell.analysis.reading.Knowledge;
import castwell.analysis.reading.Known;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Stamps;
import castwell.analysis.speed.TickRate;
import castwell.analysis.verdict.Assessment;
import castwell.capture.clock.BoardClock;
import castwell.capture.clock.MeasuredRates;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.station.ClosedPassage;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Conditions;
import castwell.capture.store.Conditions.SessionTold;
import castwell.capture.store.Figure;
import castwell.capture.store.Passages;
import castwell.capture.store.RawFacts.StoredBeat;
import castwell.capture.store.RawFacts.Timing;
import castwell.capture.store.Shot;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import java.time.Instant;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Derives figures from raw facts, by the same steps for a live passage as for a stored one. */
public final class Derivation {
  private static final double LEAD_SECONDS = 1800;

  /** The standard uncertainty of an arrow's length by a maker's tape, in metres (assumed). */
  private static final double TAPE_U_M = 0.003;

  private final CaptureSettings settings;

  public Derivation(CaptureSettings settings) {
    this.settings = settings;
  }

  /**
   * The figure that follows from a passage's ticks.
   *
   * @param passageId the passage's row, 0 while it has none yet
   */
  public Figure figure(
      long passageId,
      Passage passage,
      Calibrations.Entry calibration,
      Timing timing,
      Conditions conditions) {
    Conditions read = conditions.asRead();
    Assessment assessment = assess(passage, calibration, timing, read);
    Figure figure = FigureOf.assessment(passageId, calibration, read, passage, assessment);
    return conditions.hz() == conditions.readHz() ? figure : figure.at(conditions.rate());
  }

  private Assessment assess(
      Passage passage, Calibrations.Entry calibration, Timing timing, Conditions conditions) {
    Calibration gates = calibration.calibration();
    OptionalDouble trigger = conditions.gates().triggerM();
    Knowledge knowledge =
        new Knowledge(
            trigger.isPresent() ? gates.withTriggerScatter(trigger.getAsDouble()) : gates,
            settings.limits(),
            conditions.gates().tailLateM(),
            known(conditions.tagged().lengthM()),
            conditions.tagged().cellSpeed(),
            conditions.strays().a(),
            conditions.strays().b());
    return Assessment.of(passage, knowledge, conditions.rate(), timing.latency());
  }

  /**
   * How a stored shot's edges were read; empty for one entered by hand, and for one whose every
   * edge was lost.
   */
  public Optional<Read> read(Transaction t, Shot shot) {
    return shot.byGates()
        .flatMap(gates -> t.passages().byId(shot.passageId()))
        .map(row -> read(t, row, shot.figure().conditions()))
        .filter(read -> !read.passage().edges().isEmpty());
  }

  private Read read(Transaction t, Passages.Row row, Conditions stored) {
    Conditions conditions = stored.asRead();
    Calibrations.Entry calibration =
        t.calibrations().inForce(row.station(), row.firedMs()).orElseThrow();
    Passage passage = t.passages().together(row);
    return new Read(
        passage, conditions.hz(), assess(passage, calibration, timing(t, row), conditions));
  }

  /** Under what a passage that is new is derived. */
  public Conditions conditions(Transaction t, ClosedPassage closed, TickRate rate, Tags.Pair tags) {
    return new Conditions(
        rate.hz(),
        rate.hz(),
        rate.relativeU(),
        closed.airDensity(),
        Beforehand.gates(t, closed),
        Beforehand.tagged(t, closed.station(), closed.fired(), tags),
        Beforehand.strays(t, closed));
  }

  /** Derives a stored passage anew after edges came late. */
  public void amend(Transaction t, Passages.Row row, ClosedPassage closed, TickRate rate) {
    derive(t, row, closed.passage(), closed.timing(), before(t, row).readAt(rate));
  }

  /** The figures of what a board shot in a session. */
  public SessionFigures session(long sessionId, long boardId) {
    return new SessionFigures(this, settings.limits(), sessionId, boardId);
  }

  /** Derives and stores a passage's figure under the calibration in force for it. */
  private void derive(
      Transaction t, Passages.Row row, Passage passage, Timing timing, Conditions conditions) {
    Calibrations.Entry calibration =
        t.calibrations().inForce(row.station(), row.firedMs()).orElseThrow();
    t.figures().put(figure(row.id(), passage, calibration, timing, conditions));
    if (row.calibrationId() != calibration.id()) {
      t.passages().calibrate(row.id(), calibration.id());
    }
  }

  /**
   * Derives a stored passage anew under the conditions it was derived with before, but for what its
   * tags, which may have changed, tell of its speed.
   */
  public void deriveAgain(Transaction t, Passages.Row row) {
    if (row.isByHand()) {
      return;
    }
    Tags.Pair tags = t.tags().ofShot(row.id()).orElse(Tags.Pair.NOT_KNOWN);
    deriveAgain(
        t, row, before(t, row).with(Beforehand.tagged(t, row.station(), row.firedMs(), tags)));
  }

  /** Reads a stored passage's edges anew at another tick rate, and with what its session tells. */
  void deriveAgain(Transaction t, Passages.Row row, TickRate rate, SessionTold gates) {
    deriveAgain(t, row, before(t, row).readAt(rate).with(gates));
  }

  /** Reads a stored passage's edges anew with what its session tells of the gates. */
  void deriveAgain(Transaction t, Passages.Row row, SessionTold gates) {
    deriveAgain(t, row, before(t, row).with(gates));
  }

  private static Conditions before(Transaction t, Passages.Row row) {
    return t.figures().of(row.id(), row.calibrationId()).orElseThrow().conditions();
  }

  private void deriveAgain(Transaction t, Passages.Row row, Conditions conditions) {
    derive(t, row, t.passages().together(row), timing(t, row), conditions);
  }

  /**
   * Derives every shot of a station in a span of time, after its gates were measured anew.
   *
   * @param to the end of the span, excluded; empty for one without an end
   * @return how many shots were derived
   */
  public int deriveStation(Transaction t, String station, Instant from, Optional<Instant> to) {
    List<Passages.Row> rows =
        t.passages().ofStationFrom(station, from).stream()
            .filter(row -> to.map(end -> row.firedMs().isBefore(end)).orElse(true))
            .toList();
    rows.stream()
        .collect(Collectors.groupingBy(row -> List.of(row.sessionId(), row.boardId())))
        .values()
        .forEach(set -> deriveSet(t, set));
    return rows.size();
  }

  /** Derives shots of one session and board, which share a tick rate. */
  private void deriveSet(Transaction t, List<Passages.Row> rows) {
    Passages.Row first = rows.get(0);
    BoardClock clock = new BoardClock();
    beats(t, first.sessionId(), first.boardId()).forEach(clock::add);
    MeasuredRates rates = clock.measured();
    for (Passages.Row row : rows) {
      TickRate rate = rate(t, row.station(), row.firedMs(), timing(t, row), rates);
      deriveAgain(t, row, before(t, row).readAt(rate));
    }
  }

  /** The board's rate as its beats and the oscillator's kind tell it. */
  public TickRate rate(
      Transaction t, String station, Instant at, Timing timing, MeasuredRates rates) {
    return rate(t.calibrations().inForce(station, at).orElseThrow(), timing, rates);
  }

  public TickRate rate(Calibrations.Entry calibration, Timing timing, MeasuredRates rates) {
    TickRate nominal = TickRate.nominal(timing.hz(), calibration.calibration().oscillator());
    return rates.with(nominal, settings.hostClockRelativeU());
  }

  /** One stretch of listening to one boot, while a session lasted. */
  private record Stretch(int boot, long listening) {}

  /** The stored beats around a session's shots, half an hour to each side. */
  public List<StoredBeat> beats(Transaction t, long session, long board) {
    return t.passages().ofSession(session).stream()
        .filter(row -> row.boardId() == board && row.firstTicks() > 0)
        .collect(
            Collectors.groupingBy(
                row -> new Stretch(row.boot(), row.listeningId()),
                Collectors.summarizingLong(Passages.Row::firstTicks)))
        .entrySet()
        .stream()
        .flatMap(stretch -> beats(t, board, stretch.getKey(), stretch.getValue()))
        .toList();
  }

  private static Stream<StoredBeat> beats(
      Transaction t, long board, Stretch stretch, LongSummaryStatistics ticks) {
    int hz = t.raw().timing(board, stretch.boot()).orElse(Timing.UNTOLD).hz();
    long lead = Math.round(LEAD_SECONDS * hz);
    return t
        .raw()
        .beats(board, stretch.boot(), ticks.getMin() - lead, ticks.getMax() + lead)
        .stream()
        .filter(beat -> beat.listeningId() == stretch.listening());
  }

  /** When each gate saw each end of a stored shot; empty for one entered by hand. */
  public static Optional<Stamps> stamps(Transaction t, Shot shot) {
    return shot.byGates()
        .flatMap(gates -> t.passages().byId(shot.passageId()))
        .map(row -> stamps(t, row, shot.figure()));
  }

  private static Stamps stamps(Transaction t, Passages.Row row, Figure figure) {
    return new Stamps(
        t.passages().together(row), figure.conditions().rate(), timing(t, row).latency());
  }

  static Timing timing(Transaction t, Passages.Row row) {
    return t.raw().timing(row.boardId(), row.boot()).orElse(Timing.UNTOLD);
  }

  private static Optional<Known> known(OptionalDouble lengthM) {
    return lengthM.stream().mapToObj(length -> new Known(length, TAPE_U_M)).findFirst();
  }
}
