package castwell.capture.derive;

import castwell.analysis.reading.Knowledge;
import castwell.analysis.reading.Known;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Measurement;
import castwell.analysis.speed.Stamps;
import castwell.analysis.speed.TickRate;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.verdict.Assessment;
import castwell.analysis.verdict.Judge;
import castwell.analysis.verdict.Verdict;
import castwell.capture.clock.BoardClock;
import castwell.capture.clock.MeasuredRates;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Figure;
import castwell.capture.store.Passages;
import castwell.capture.store.Rack;
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
  private final CaptureSettings settings;

  public Derivation(CaptureSettings settings) {
    this.settings = settings;
  }

  /** The tick rate, and the air's density in kg/m3, under which a passage is derived. */
  public record Conditions(TickRate rate, double airDensity) {}

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
      Conditions conditions,
      OptionalDouble taggedLengthM) {
    Knowledge knowledge =
        Knowledge.of(calibration.calibration(), settings.limits())
            .withTaggedLength(
                taggedLengthM.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Known(taggedLengthM.getAsDouble(), 0)));
    Assessment assessment = Assessment.of(passage, knowledge, conditions.rate(), timing.latency());
    return figure(
        passageId, calibration.id(), conditions, assessment.measurement(), assessment.verdict());
  }

  /** Derives and stores a passage's figure under the calibration in force for it. */
  public void derive(
      Transaction t, Passages.Row row, Passage passage, Timing timing, Conditions conditions) {
    Calibrations.Entry calibration =
        t.calibrations().inForce(row.station(), row.firedMs()).orElseThrow();
    OptionalDouble length = length(t, t.tags().ofShot(row.id()).orElse(Tags.Pair.NOT_KNOWN));
    t.figures().put(figure(row.id(), passage, calibration, timing, conditions, length));
    if (row.calibrationId() != calibration.id()) {
      t.passages().calibrate(row.id(), calibration.id());
    }
  }

  /** Derives a stored passage anew under the conditions it was derived with before. */
  public void deriveAgain(Transaction t, Passages.Row row) {
    if (row.isByHand()) {
      return;
    }
    Figure before = t.figures().of(row.id(), row.calibrationId()).orElseThrow();
    TickRate rate = new TickRate(before.hz(), before.hzRelativeU());
    deriveAgain(t, row, new Conditions(rate, before.airDensity()));
  }

  /**
   * Derives a stored passage anew at another tick rate, in the air that it was derived with before.
   */
  public void deriveAgain(Transaction t, Passages.Row row, TickRate rate) {
    Figure before = t.figures().of(row.id(), row.calibrationId()).orElseThrow();
    deriveAgain(t, row, new Conditions(rate, before.airDensity()));
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
      deriveAgain(t, row, rate(t, row.station(), row.firedMs(), timing(t, row), rates));
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
    TickRate rate = new TickRate(figure.hz(), figure.hzRelativeU());
    return new Stamps(t.passages().together(row), rate, timing(t, row).latency());
  }

  static Timing timing(Transaction t, Passages.Row row) {
    return t.raw().timing(row.boardId(), row.boot()).orElse(Timing.UNTOLD);
  }

  /** The length in m of the arrow that the tags name; empty where it isn't known. */
  public static OptionalDouble length(Transaction t, Tags.Pair tags) {
    return tags.arrowId().isEmpty()
        ? OptionalDouble.empty()
        : t.rack()
            .arrowById(tags.arrowId().getAsLong())
            .map(Rack.Arrow::lengthM)
            .orElse(OptionalDouble.empty());
  }

  private static Figure figure(
      long passageId, long calibrationId, Conditions conditions, Measurement m, Verdict verdict) {
    boolean clean = verdict.counts();
    return new Figure(
        passageId,
        calibrationId,
        Judge.RULES_VERSION,
        conditions.rate().hz(),
        conditions.rate().relativeU(),
        conditions.airDensity(),
        value(m.speed()),
        part(m.speed(), Kind.OWN),
        part(m.speed(), Kind.COMMON),
        value(m.front()),
        uncertainty(m.front()),
        value(m.tail()),
        uncertainty(m.tail()),
        value(m.length()),
        uncertainty(m.length()),
        clean,
        clean ? "clean" : verdict.reasons().get(0).code(),
        Figure.written(verdict.reasons().stream().flatMap(r -> r.told().stream()).toList()));
  }

  private static OptionalDouble value(Optional<Quantity> quantity) {
    return quantity.stream().mapToDouble(Quantity::value).findFirst();
  }

  private static OptionalDouble uncertainty(Optional<Quantity> quantity) {
    return quantity.stream().mapToDouble(Quantity::standardUncertainty).findFirst();
  }

  private static OptionalDouble part(Optional<Quantity> quantity, Kind kind) {
    return quantity.stream().mapToDouble(q -> q.standardUncertainty(kind)).findFirst();
  }
}
