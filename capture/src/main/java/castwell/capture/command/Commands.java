package castwell.capture.command;

import castwell.analysis.reading.Limits;
import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.speed.Calibration;
import castwell.analysis.wording.Amount;
import castwell.capture.announce.AnnouncedStore;
import castwell.capture.announce.Announcer;
import castwell.capture.command.Refused.Why;
import castwell.capture.derive.Derivation;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Feed;
import castwell.capture.store.Passages;
import castwell.capture.store.Rack;
import castwell.capture.store.Readings.Reading;
import castwell.capture.store.Sessions;
import castwell.capture.store.Store;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import castwell.capture.wire.Sentence.Key;
import castwell.capture.wire.Sentence.Press;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Function;

/**
 * What a person can do at the range: set tags, decide about shots, write notes, calibrate gates.
 * Each command is committed, with the figures that follow from it, before anyone is told of it.
 */
public final class Commands {
  private static final int TAG_KEY = 1;

  private final Store store;
  private final AnnouncedStore announced;
  private final Derivation derivation;
  private final Clock clock;
  private final ZoneId zone;
  private final Limits limits;
  private final BowCommands bows;
  private final ArrowCommands arrows;
  private final PlanCommands plans;
  private final SessionCommands sessions;

  public Commands(Store store, CaptureSettings settings, Announcer announcer, Clock clock) {
    this.store = store;
    this.derivation = new Derivation(settings);
    this.announced = new AnnouncedStore(store, announcer);
    this.clock = clock;
    this.zone = settings.zone();
    this.limits = settings.limits();
    this.bows = new BowCommands(announced, clock);
    this.arrows = new ArrowCommands(announced, derivation, clock);
    this.plans = new PlanCommands(announced, clock);
    this.sessions = new SessionCommands(announced, derivation, clock);
  }

  /** The commands about plans. */
  public PlanCommands plans() {
    return plans;
  }

  /** The commands about whole sessions. */
  public SessionCommands sessions() {
    return sessions;
  }

  /** The commands about bows. */
  public BowCommands bows() {
    return bows;
  }

  /** The commands about arrows. */
  public ArrowCommands arrows() {
    return arrows;
  }

  /** Sets who shoots what from an instant on. Tags that hold already change nothing. */
  public void tag(
      String station, Instant from, Optional<String> bow, Optional<String> arrow, String by) {
    announced.writing(t -> change(t, station, from, pair(t, bow, arrow), by));
  }

  public void tag(String station, Optional<String> bow, Optional<String> arrow, String by) {
    tag(station, clock.instant(), bow, arrow, by);
  }

  private static void change(
      Transaction t, String station, Instant from, Tags.Pair tags, String by) {
    if (!t.tags().at(station, from).equals(tags)) {
      t.tags().change(station, from, tags, by);
      PlanCommands.tagsChanged(t, station, from, by);
      t.feed().add(Feed.Kind.TAGS, station, OptionalLong.empty());
    }
  }

  /**
   * Takes a press of the board's key: a short one chooses the next arrow, a long one the next bow.
   */
  public void key(String station, Key key, Instant at) {
    if (key.key() == TAG_KEY) {
      announced.writing(
          t -> {
            Tags.Pair now = t.tags().at(station, at);
            Tags.Pair next =
                key.press() == Press.SHORT
                    ? new Tags.Pair(
                        now.bowId(),
                        next(
                            inUse(
                                t.rack().arrows().stream().map(Rack.Arrow::id).toList(),
                                t.retirements().arrows()),
                            now.arrowId()))
                    : new Tags.Pair(
                        next(
                            inUse(
                                t.rack().bowNames().stream().map(Rack.Named::id).toList(),
                                t.retirements().bows()),
                            now.bowId()),
                        now.arrowId());
            change(t, station, at, next, "key");
          });
    }
  }

  private static List<Long> inUse(List<Long> ids, Set<Long> retired) {
    return ids.stream().filter(id -> !retired.contains(id)).toList();
  }

  private static OptionalLong next(List<Long> ids, OptionalLong now) {
    if (ids.isEmpty()) {
      return OptionalLong.empty();
    }
    int at = now.isPresent() ? ids.indexOf(now.getAsLong()) : -1;
    return OptionalLong.of(ids.get((at + 1) % ids.size()));
  }

  /** A shot, and the bow and arrow that it was shot with. */
  public record Retagging(String shotId, Optional<String> bow, Optional<String> arrow) {}

  public void retag(
      String shotId, Optional<String> bow, Optional<String> arrow, String by, String why) {
    retag(List.of(new Retagging(shotId, bow, arrow)), by, why);
  }

  /** Retags all of the shots or none. */
  public void retag(List<Retagging> shots, String by, String why) {
    String reason = Checks.text("refused.what_reason", why);
    announced.writing(
        t -> {
          for (Retagging shot : shots) {
            Passages.Row row = shot(t, shot.shotId());
            Tags.Pair pair = pair(t, shot.bow(), shot.arrow());
            t.tags().tagShot(row.id(), pair, clock.instant(), by, reason);
            derivation.deriveAgain(t, row);
            t.feed().shot(row.station(), row.id());
            PlanCommands.shot(t, row);
          }
        });
  }

  public void decide(String shotId, Decided decided, String reason, String by) {
    String words = Checks.text("refused.what_reason", reason);
    if (decided != Decided.AS_JUDGED && words.isEmpty()) {
      throw Refused.of(Why.INVALID, "refused.no_reason");
    }
    announced.writing(
        t -> {
          Passages.Row row = shot(t, shotId);
          t.decisions().decide(row.id(), decided, words, clock.instant(), by);
          t.feed().shot(row.station(), row.id());
          PlanCommands.shot(t, row);
        });
  }

  public void beginSession(String station, String by) {
    announced.writing(
        t -> {
          Instant now = clock.instant();
          t.sessions().begin(station, now, LocalDate.ofInstant(now, zone).toString(), by);
          t.feed().add(Feed.Kind.REFRESH, station, OptionalLong.empty());
        });
  }

  /**
   * Enters a speed that was read off another display just now, with the bow and the arrow that are
   * chosen.
   *
   * @return the shot's id
   */
  public String typed(String station, Reading reading, String by) {
    double mps = reading.speedMps().orElse(0);
    if (!(mps >= limits.slowestMps() && mps <= limits.fastestMps())) {
      throw Refused.of(
          Why.INVALID,
          "refused.no_arrows_speed",
          Amount.speed(limits.slowestMps()),
          Amount.speed(limits.fastestMps()));
    }
    Instant now = clock.instant();
    String shotId = "typed-%s-%d".formatted(station, now.toEpochMilli());
    announced.writing(
        t -> {
          if (t.passages().isKnown(shotId)) {
            throw Refused.of(Why.CONFLICT, "refused.typed_twice");
          }
          Sessions.Place place =
              t.sessions().place(station, now, true, LocalDate.ofInstant(now, zone).toString());
          long id = t.passages().enter(shotId, station, now, place.sessionId(), place.endNumber());
          t.readings().add(id, reading, now, by);
          t.tags().tagShot(id, t.tags().at(station, now), now, by, "");
          t.feed().shot(station, id);
          PlanCommands.shot(t, shot(t, shotId));
        });
    return shotId;
  }

  /**
   * Writes a note about a session.
   *
   * @param note empty to take the last one back
   */
  public void note(String session, String note, String by) {
    String words = Checks.text("refused.what_note", note);
    announced.writing(
        t -> {
          Sessions.Session named =
              t.sessions()
                  .byName(session)
                  .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_session", session));
          t.notes().write(named.id(), words, clock.instant(), by);
          t.feed().add(Feed.Kind.REFRESH, named.station(), OptionalLong.empty());
        });
  }

  /** Enters the gates' dimensions, which hold from an instant on. */
  public int calibrate(String station, Instant from, Calibration calibration, String by) {
    return calibrate(station, from, Optional.empty(), calibration, by);
  }

  /**
   * Enters the gates' dimensions, and derives every shot of the station in that time anew.
   *
   * @param to the first instant at which it holds no more; empty when it holds for good
   * @return how many shots it covers
   */
  public int calibrate(
      String station, Instant from, Optional<Instant> to, Calibration calibration, String by) {
    Checks.gates(from, to, calibration);
    return announced.write(
        t -> {
          t.calibrations().enter(station, from, to, calibration, clock.instant(), by);
          t.feed().add(Feed.Kind.REFRESH, station, OptionalLong.empty());
          return derivation.deriveStation(t, station, from, to);
        });
  }

  /** Tries a calibration out: shots are derived anew, looked at, and everything is undone. */
  public <T> T tryCalibration(
      String station,
      Instant from,
      Optional<Instant> to,
      Calibration calibration,
      Function<Transaction, T> look) {
    Checks.gates(from, to, calibration);
    return store.tryOut(
        t -> {
          t.calibrations().enter(station, from, to, calibration, clock.instant(), "trial");
          derivation.deriveStation(t, station, from, to);
          return look.apply(t);
        });
  }

  /**
   * Enters what the configuration or a recording says about the gates, unless it said the same
   * before. Of the errors that it says a set-up has, the gates in force are told, whoever measured
   * them.
   */
  public void calibrateUnlessSaid(
      String station, Instant from, Calibration calibration, String by) {
    Optional<Calibrations.Entry> said = store.read(t -> t.calibrations().lastBy(station, by));
    if (said.map(entry -> !entry.calibration().isSameButForErrors(calibration)).orElse(true)) {
      calibrate(station, from, calibration, by);
    }
    Calibrations.Entry now = store.read(t -> t.calibrations().inForce(station, from)).orElseThrow();
    SetUpErrors errors = calibration.errors();
    if (!now.calibration().errors().equals(errors)) {
      calibrate(
          station, from, now.validTo(), now.calibration().with(errors), by + ", as to its errors");
    }
  }

  /**
   * Carries out many changes at once: either all of them are committed or none, before anyone is
   * told.
   */
  public <T> T together(Function<Transaction, T> work) {
    return announced.write(work);
  }

  /**
   * Carries out changes, looks at the result and undoes them. Nobody is told, since nothing is
   * kept.
   */
  public <T> T tryOut(Function<Transaction, T> work) {
    return store.tryOut(work);
  }

  private static Tags.Pair pair(Transaction t, Optional<String> bow, Optional<String> arrow) {
    return new Tags.Pair(
        bow.map(name -> OptionalLong.of(BowCommands.bow(t, name).id()))
            .orElse(OptionalLong.empty()),
        arrow
            .map(name -> OptionalLong.of(ArrowCommands.arrow(t, name).id()))
            .orElse(OptionalLong.empty()));
  }

  private static Passages.Row shot(Transaction t, String shotId) {
    return t.passages()
        .byShotId(shotId)
        .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_shot", shotId));
  }
}
