package castwell.capture.daemon;

import castwell.analysis.speed.TickRate;
import castwell.capture.clock.MeasuredRates;
import castwell.capture.command.PlanCommands;
import castwell.capture.derive.Derivation;
import castwell.capture.derive.SessionFigures;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.station.ClosedPassage;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Conditions.SessionTold;
import castwell.capture.store.EdgeNumbers;
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
import java.util.Optional;
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

  /**
   * The session a board shoots in, and what its shots were derived with.
   *
   * @param readHz the tick rate at which their edges were read
   * @param counting how many of its shots count
   * @param isTelling whether so many tell clearly more of the gates, and that isn't looked at yet
   */
  private record Current(
      long session,
      TickRate rate,
      double readHz,
      int counting,
      boolean isTelling,
      Timing timing,
      Instant fired) {

    /** The same, the figures brought to this rate. */
    Current at(TickRate now, double readNowHz) {
      return new Current(session, now, readNowHz, counting, false, timing, fired);
    }
  }

  /**
   * What a passage on the disk means for what comes.
   *
   * @param isFirst whether it is the board's first since this program started
   * @param beginsSession whether it is of another session than the board's last one
   * @param earlierBeats for the board's first passage, the beats stored around its session's shots;
   *     else empty
   * @param knowsBetter whether more is known by now than the session's earlier shots were derived
   *     with, so that {@link #refresh} has something to do; that is left for later, since it takes
   *     long
   */
  record Recorded(
      boolean isFirst, boolean beginsSession, List<StoredBeat> earlierBeats, boolean knowsBetter) {}

  /**
   * A passage's row.
   *
   * @param isOneMore whether it is a new shot that counts
   */
  private record Written(Passages.Row row, boolean isOneMore) {}

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
              List<Passages.Row> known =
                  t.passages()
                      .named(closed.board(), closed.boot(), EdgeNumbers.of(closed.passage()));
              Written written =
                  known.isEmpty()
                      ? insert(t, closed, listening, calibration, rate)
                      : new Written(amend(t, closed, known, rate), false);
              t.feed().shot(closed.station(), written.row().id());
              PlanCommands.shot(t, written.row());
              return taken(t, closed, written, rate);
            });
    current.put(new Key(closed.station(), closed.board().id()), taken.now());
    return taken.recorded();
  }

  private Written insert(
      Transaction t,
      ClosedPassage closed,
      long listening,
      Calibrations.Entry calibration,
      TickRate rate) {
    String station = closed.station();
    Instant fired = closed.fired();
    Tags.Pair tags = t.tags().at(station, fired);
    Figure figure =
        derivation.figure(
            0,
            closed.passage(),
            calibration,
            closed.timing(),
            derivation.conditions(t, closed, rate, tags));
    Sessions.Place place = t.sessions().place(station, fired, figure.clean(), date(fired));
    Passages.Row row =
        new Passages.Row(
            0,
            Passages.shotId(closed.board(), closed.boot(), closed.passage().firstEdge()),
            closed.board().id(),
            closed.boot(),
            EdgeNumbers.of(closed.passage()),
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
    return new Written(inserted, figure.clean());
  }

  private Passages.Row amend(
      Transaction t, ClosedPassage closed, List<Passages.Row> known, TickRate rate) {
    Passages.Row row = known.get(0);
    t.passages().amend(row.id(), closed.passage(), closed.firstTicks());
    for (Passages.Row part : known.subList(1, known.size())) {
      t.passages().join(part.id(), row.id());
      // The feed tells that this part is no shot of its own any more.
      t.feed().shot(closed.station(), part.id());
    }
    derivation.amend(t, row, closed, rate);
    return row;
  }

  private Taken taken(Transaction t, ClosedPassage closed, Written written, TickRate rate) {
    Passages.Row row = written.row();
    Current before = current.get(new Key(closed.station(), closed.board().id()));
    boolean isFirst = before == null;
    boolean sameSession = !isFirst && before.session() == row.sessionId();
    int counting =
        sameSession
            ? before.counting() + (written.isOneMore() ? 1 : 0)
            : t.boardFigures(row.sessionId(), closed.board().id()).ends().size();
    boolean isTelling =
        sameSession && before.isTelling()
            || written.isOneMore() && SessionFigures.isTelling(counting);
    Current now =
        new Current(
            row.sessionId(),
            sameSession ? before.rate() : rate,
            sameSession ? before.readHz() : rate.hz(),
            counting,
            isTelling,
            closed.timing(),
            closed.fired());
    List<StoredBeat> earlier =
        isFirst ? derivation.beats(t, row.sessionId(), closed.board().id()) : List.of();
    return new Taken(
        now, new Recorded(isFirst, !sameSession, earlier, isTelling || isMoved(now, rate)));
  }

  /**
   * Derives the session's earlier shots again where more is known than when they were shot: the
   * board's further beats tell its tick rate better, and the shots together tell of the gates.
   *
   * @return whether any figure changed
   */
  boolean refresh(String station, long boardId, MeasuredRates rates) {
    Key key = new Key(station, boardId);
    Current before = current.get(key);
    if (before == null) {
      return false;
    }
    Optional<Current> now =
        store.write(
            t -> {
              TickRate rate = derivation.rate(t, station, before.fired(), before.timing(), rates);
              Optional<Current> next = catchUp(t, key, before, rate);
              if (next.isPresent()) {
                t.feed().add(Feed.Kind.REFRESH, station, OptionalLong.empty());
              }
              return next;
            });
    current.put(key, now.orElse(before.at(before.rate(), before.readHz())));
    return now.isPresent();
  }

  private static boolean isMoved(Current now, TickRate rate) {
    return Math.abs(rate.hz() / now.rate().hz() - 1) > NOTEWORTHY
        || rate.relativeU() < now.rate().relativeU() / 2;
  }

  /** What holds after figures were changed; empty where none had to be. */
  private Optional<Current> catchUp(Transaction t, Key key, Current now, TickRate rate) {
    if (!now.isTelling() && !isMoved(now, rate)) {
      return Optional.empty();
    }
    SessionFigures figures = derivation.session(now.session(), key.boardId());
    SessionTold before = figures.gates(t);
    SessionTold told = now.isTelling() ? figures.told(t, key.station(), now.fired()) : before;
    if (told.isNewsTo(before)) {
      figures.readAnew(t, rate, told);
      return Optional.of(now.at(rate, rate.hz()));
    }
    return isMoved(now, rate)
        ? Optional.of(now.at(rate, figures.follow(t, rate, now.readHz(), before)))
        : Optional.empty();
  }

  private String date(Instant instant) {
    return LocalDate.ofInstant(instant, settings.zone()).toString();
  }
}
