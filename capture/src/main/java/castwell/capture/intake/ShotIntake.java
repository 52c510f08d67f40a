package castwell.capture.intake;

import castwell.analysis.reading.Limits;
import castwell.analysis.unit.Units;
import castwell.capture.command.Checks;
import castwell.capture.intake.sheet.CantRead;
import castwell.capture.intake.sheet.Line;
import castwell.capture.intake.sheet.Once;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Readings.Reading;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** Takes in shots that somebody wrote down. A shot that is there already is left as it is. */
final class ShotIntake implements Intake {
  private static final String STATION = "by-hand";

  private final Transaction t;
  private final Brought brought;
  private final CaptureSettings settings;
  private final Instant now;
  private final Firing firing;
  private final ShotNames names;
  private final RackNames rack;
  private final Map<String, Long> sessions = new HashMap<>();
  private final Once once = new Once();
  private final Tally tally = new Tally();

  ShotIntake(Transaction t, Brought brought, CaptureSettings settings, Instant now) {
    this.t = t;
    this.brought = brought;
    this.settings = settings;
    this.now = now;
    this.firing = new Firing(now, settings.zone());
    this.names = new ShotNames(brought.source(), brought.text());
    this.rack = new RackNames(t);
  }

  @Override
  public void take(Line line) {
    ShotRow row = ShotRow.read(line, settings.zone());
    String shotId = Checks.name("refused.what_shot", row.shotId().orElseGet(() -> names.of(row)));
    once.refuseTwice(line, shotId, shotId);
    refuseOutlandish(line, row);
    Tags.Pair tags = new Tags.Pair(bow(line, row), arrow(line, row));
    Instant fired = firing.at(row);
    if (t.passages().isKnown(shotId)) {
      tally.already();
    } else {
      enter(line, row, shotId, tags, fired);
    }
  }

  private void enter(Line line, ShotRow row, String shotId, Tags.Pair tags, Instant fired) {
    String station = row.station().orElse(STATION);
    long id = t.passages().enter(shotId, station, fired, session(row, station, fired), row.end());
    t.readings().add(id, reading(line, row), now, brought.by());
    t.tags().tagShot(id, tags, fired, brought.by(), "");
    decision(row)
        .ifPresent(
            decided -> t.decisions().decide(id, decided, reason(row, decided), now, brought.by()));
    tally.take();
    if (!row.counts()) {
      tally.setAside();
    }
  }

  private void refuseOutlandish(Line line, ShotRow row) {
    Limits limits = settings.limits();
    double speed = row.speedMps().orElse(limits.slowestMps());
    boolean arrow = speed >= limits.slowestMps() && speed <= limits.fastestMps();
    if (row.counts() && !row.byPerson() && !arrow) {
      throw new CantRead(
          "sheet.outlandish",
          line.named("speed"),
          Math.round(limits.slowestMps() / Units.METRES_PER_FOOT),
          Math.round(limits.fastestMps() / Units.METRES_PER_FOOT));
    }
  }

  private OptionalLong bow(Line line, ShotRow row) {
    return row.bow().stream().mapToLong(name -> rack.bow(line, name)).findFirst();
  }

  private OptionalLong arrow(Line line, ShotRow row) {
    return row.arrow().stream().mapToLong(name -> rack.arrow(line, name)).findFirst();
  }

  private long session(ShotRow row, String station, Instant fired) {
    String name =
        Checks.name(
            "refused.what_session", row.session().orElseGet(() -> firing.date(row).toString()));
    return sessions.computeIfAbsent(
        name,
        sought ->
            t.sessions()
                .byName(sought)
                .map(Session::id)
                .orElseGet(() -> t.sessions().begin(station, fired, sought, brought.by())));
  }

  private Reading reading(Line line, ShotRow row) {
    HandUncertainty usual = brought.uncertainty();
    return new Reading(
        row.speedMps(),
        row.ownMps().orElse(usual.ownMps()),
        row.commonMps().orElse(usual.commonShare() * row.speedMps().orElse(0)),
        Checks.text("refused.what_note", row.note()),
        "%s, line %d".formatted(brought.source(), line.number()));
  }

  private static Optional<Decided> decision(ShotRow row) {
    if (!row.counts()) {
      return Optional.of(Decided.SET_ASIDE);
    }
    return row.byPerson() ? Optional.of(Decided.BROUGHT_BACK) : Optional.empty();
  }

  /**
   * The words that a person gave as the reason. An export puts other words around them; these are
   * taken off here, since the next export adds them again.
   */
  private String reason(ShotRow row, Decided decided) {
    boolean aside = decided == Decided.SET_ASIDE;
    String prefix = aside ? "Set aside: " : "Brought back: ";
    String told = row.reason().isEmpty() ? row.note() : row.reason();
    String words =
        told.startsWith(prefix) ? told.substring(prefix.length()).replaceFirst("\\.$", "") : told;
    String otherwise = (aside ? "set aside in " : "brought back in ") + brought.source();
    return Checks.text("refused.what_reason", words.isEmpty() ? otherwise : words);
  }

  @Override
  public Tally tally() {
    return tally;
  }
}
