package castwell.capture.daemon;

import castwell.analysis.shot.Passage;
import castwell.analysis.speed.TickRate;
import castwell.capture.clock.MeasuredRates;
import castwell.capture.command.PlanCommands;
import castwell.capture.derive.Derivation;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.station.ClosedPassage;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Feed;
import castwell.capture.store.Figure;
import castwell.capture.store.Passages;
import castwell.capture.store.RawFacts.StoredBeat;
import castwell.capture.store.RawFacts.Timing;
import castwell.capture.store.Sessions;
import castwell.capture.store.Store;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.Consumer;

/** Records passages, hops three and four: speed and verdict, then one transaction a passage. */
final class Recorder {
  /**
   * The relative change of the tick rate beyond which a session's earlier shots are derived again.
   */
  private static final double NOTEWORTHY = 2e-6;

  private final Store store;
  private final CaptureSettings settings;
  private final Derivation derivation;
  private final Map<Key, Current> current = new HashMap<>();

  private record Key(String station, long boardId) {}

  /** The session a board shoots in, and the tick rate that its shots were derived with. */
  private record Current(long session, TickRate rate, Timing timing, Instant fired) {}

  /**
   * What a passage on the disk means for what comes.
   *
   * @param isFirst whether it is the board's first since this program started
   * @param beginsSession whether it is of another session than the board's last one
   * @param earlierBeats for the board's first passage, the beats stored around its session's shots;
   *     else empty
   * @param rateMoved whether the tick rate is known better than the session's earlier shots were
   *     derived with, so that {@link #refresh} has something to do; that is left for later, since
   *     it takes long
   */
  record Recorded(
      boolean isFirst, boolean beginsSession, List<StoredBeat> earlierBeats, boolean rateMoved) {}

  /** A passage on the disk, and what holds from now on. */
  private record Taken(Current now, Recorded recorded) {}

  Recorder(Store store, CaptureSettings settings, Derivation derivation) {
    this.store = store;
    this.settings = settings;
    this.derivation = derivation;
  }

  /**
   * Puts a passage on the disk: new, or amended where its edges are known already.
   *
   * @param listening the row of its stretch of listening
   * @param facts writes other raw facts in the same transaction
   */
  Recorded record(ClosedPassage closed, long listening, Consumer<Transaction> facts) {
    Taken taken =
        store.write(
            t -> {
              facts.accept(t);
              t.raw().edges(closed.board().id(), closed.boot(), closed.passage().edges());
              Calibrations.Entry calibration =
                  t.calibrations().inForce(closed.station(), closed.fired()).orElseThrow();
              TickRate rate = derivation.rate(calibration, closed.timing(), closed.rates());
              var conditions = new Derivation.Conditions(rate, closed.airDensity());
              Passage passage = closed.passage();
              List<Passages.Row> known =
                  t.passages()
                      .named(
                          closed.board(), closed.boot(), passage.firstEdge(), passage.lastEdge());
              Passages.Row row =
                  known.isEmpty()
                      ? insert(t, closed, listening, calibration, conditions)
                      : amend(t, closed, known, conditions);
              t.feed().shot(closed.station(), row.id());
              PlanCommands.shot(t, row);
              return taken(t, closed, row, rate);
            });
    current.put(new Key(closed.station(), closed.board().id()), taken.now());
    return taken.recorded();
  }

  private Passages.Row insert(
      Transaction t,
      ClosedPassage closed,
      long listening,
      Calibrations.Entry calibration,
      Derivation.Conditions conditions) {
    String station = closed.station();
    Instant fired = closed.fired();
    Tags.Pair tags = t.tags().at(station, fired);
    Figure figure =
        derivation.figure(
            0,
            closed.passage(),
            calibration,
            closed.timing(),
            conditions,
            Derivation.length(t, tags));
    Sessions.Place place = t.sessions().place(station, fired, figure.clean(), date(fired));
    Passages.Row row =
        new Passages.Row(
            0,
            Passages.shotId(closed.board(), closed.boot(), closed.passage().firstEdge()),
            closed.board().id(),
            closed.boot(),
            closed.passage().firstEdge(),
            closed.passage().lastEdge(),
            closed.firstTicks(),
            closed.passage().boardRestarted(),
            closed.passage().edgesDropped(),
            listening,
            station,
            fired,
            place.sessionId(),
            place.endNumber(),
            calibration.id());
    Passages.Row inserted = t.passages().insert(row);
    t.tags().tagShot(inserted.id(), tags, fired, "capture", "");
    t.figures().put(figure.ofPassage(inserted.id()));
    return inserted;
  }

  private Passages.Row amend(
      Transaction t,
      ClosedPassage closed,
      List<Passages.Row> known,
      Derivation.Conditions conditions) {
    Passages.Row row = known.get(0);
    t.passages().amend(row.id(), closed.passage(), closed.firstTicks());
    for (Passages.Row part : known.subList(1, known.size())) {
      t.passages().join(part.id(), row.id());
      // The feed tells that this part is no shot of its own any more.
      t.feed().shot(closed.station(), part.id());
    }
    derivation.derive(t, row, closed.passage(), closed.timing(), conditions);
    return row;
  }

  private Taken taken(Transaction t, ClosedPassage closed, Passages.Row row, TickRate rate) {
    Current before = current.get(new Key(closed.station(), closed.board().id()));
    boolean isFirst = before == null;
    boolean sameSession = !isFirst && before.session() == row.sessionId();
    TickRate applied = sameSession ? before.rate() : rate;
    Current now = new Current(row.sessionId(), applied, closed.timing(), closed.fired());
    List<StoredBeat> earlier =
        isFirst ? derivation.beats(t, row.sessionId(), closed.board().id()) : List.of();
    return new Taken(now, new Recorded(isFirst, !sameSession, earlier, isMoved(now, rate)));
  }

  /**
   * Derives the session's earlier shots again where the board's further beats tell its tick rate
   * better.
   *
   * @return whether any figure changed
   */
  boolean refresh(String station, long boardId, MeasuredRates rates) {
    Key key = new Key(station, boardId);
    Current before = current.get(key);
    if (before == null) {
      return false;
    }
    Current now =
        store.write(
            t -> {
              TickRate rate = derivation.rate(t, station, before.fired(), before.timing(), rates);
              Current next = catchUp(t, key, before, rate);
              if (next != before) {
                t.feed().add(Feed.Kind.REFRESH, station, OptionalLong.empty());
              }
              return next;
            });
    current.put(key, now);
    return now != before;
  }

  private static boolean isMoved(Current now, TickRate rate) {
    return Math.abs(rate.hz() / now.rate().hz() - 1) > NOTEWORTHY
        || rate.relativeU() < now.rate().relativeU() / 2;
  }

  private Current catchUp(Transaction t, Key key, Current now, TickRate rate) {
    if (!isMoved(now, rate)) {
      return now;
    }
    t.passages().ofSession(now.session()).stream()
        .filter(row -> row.boardId() == key.boardId())
        .forEach(row -> derivation.deriveAgain(t, row, rate));
    return new Current(now.session(), rate, now.timing(), now.fired());
  }

  private String date(Instant instant) {
    return LocalDate.ofInstant(instant, settings.zone()).toString();
  }
}
