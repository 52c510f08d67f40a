package castwell.web.workbench;

import static castwell.web.unit.Dimension.DISTANCE;
import static castwell.web.unit.Dimension.FINE_LENGTH;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.speed.Calibration;
import castwell.capture.daemon.Refused;
import castwell.capture.daemon.Refused.Why;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Shot;
import castwell.capture.store.Weather.Air;
import castwell.web.chart.Axis;
import castwell.web.chart.Chart;
import castwell.web.chart.Mark;
import castwell.web.chart.Mark.Point;
import castwell.web.chart.Sheet;
import castwell.web.chart.Style;
import castwell.web.report.Saying;
import castwell.web.report.SessionReport;
import castwell.web.text.Speech;
import castwell.web.workbench.BowPage.Fact;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** One outing: every shot, what doesn't count and why, and the gates it was shot through. */
public final class SessionPage {
  private final Asked asked;
  private final Speech speech;
  private final Session session;
  private final List<Shot> shots;

  /**
   * @param ends the first first
   * @param bows that shots can be said to be of
   */
  public record View(
      String name,
      String station,
      String note,
      List<String> answer,
      List<Fact> facts,
      Chart chart,
      List<End> ends,
      List<String> bows,
      List<String> arrows,
      Gates gates) {}

  public record End(String name, List<Row> shots) {}

  /**
   * @param reason why it doesn't count, or why it does in spite of the rules
   */
  public record Row(
      String id,
      String time,
      String bow,
      String arrow,
      String speed,
      boolean counts,
      String reason) {}

  /**
   * The gates as this session's shots know them, and what another measure of them would change.
   *
   * @param trial of each cell its mean before and after, empty where none was asked for
   * @param refused why there is no trial, "" otherwise
   * @param from the first instant of the session, to the next one's
   */
  public record Gates(
      List<Fact> now,
      Field spacing,
      Field spacingU,
      List<Fact> asked,
      Optional<Sheet> trial,
      String refused,
      String from,
      String to,
      String spacingMm,
      String spacingUMm) {}

  private SessionPage(Asked asked) {
    this.asked = asked;
    this.speech = asked.speech();
    String name = asked.named("name");
    this.session =
        asked
            .t()
            .sessions()
            .byName(name)
            .orElseThrow(() -> new Refused(Why.NOT_FOUND, asked.say("session.none", name)));
    this.shots = asked.t().shots().ofSession(name);
  }

  public static Page of(Asked asked, GatesTrial.Desk desk) {
    SessionPage page = new SessionPage(asked);
    return new Page(Room.SESSIONS, "session", page.session.name(), page.view(desk));
  }

  private View view(GatesTrial.Desk desk) {
    return new View(
        session.name(),
        session.station(),
        asked.t().notes().of(session.id()).orElse(""),
        SessionReport.of(asked.t(), asked.zone(), Optional.of(session.name()), new Saying(speech))
            .sentences(),
        conditions(),
        chart(),
        ends(),
        asked.t().rack().bowNames().stream().map(Rack.Named::name).toList(),
        asked.t().rack().arrows().stream().map(Arrow::name).toList(),
        new GatesTrial(asked, session, shots, desk).gates());
  }

  private List<Fact> conditions() {
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(asked.say("session.began"), Days.withMinute(session.startedMs(), asked.zone())));
    facts.add(new Fact(asked.say("session.station"), session.station()));
    Air air = asked.t().weather().ofSession(session.name());
    facts.add(new Fact(asked.say("session.air"), plain(air.celsius(), 1, " °C")));
    facts.add(new Fact(asked.say("session.humidity"), plain(air.relativeHumidity(), 100, " %")));
    OptionalDouble middle =
        shots.stream()
            .flatMap(shot -> shot.byGates().stream())
            .mapToDouble(Shot.ByGates::middleFromBowM)
            .max();
    facts.add(new Fact(asked.say("session.distance"), speech.plain(DISTANCE, middle)));
    return facts;
  }

  private String plain(OptionalDouble value, double factor, String unit) {
    return value.isPresent()
        ? Math.round(value.getAsDouble() * factor) + unit
        : asked.say("figure.not_known");
  }

  /** Every shot over time; what doesn't count as a cross. */
  private Chart chart() {
    Map<String, List<Point>> counting = new LinkedHashMap<>();
    List<Point> aside = new ArrayList<>();
    Sheet.Rows rows =
        new Sheet.Rows(
            asked.say("session.time"),
            asked.say("bow"),
            asked.say("arrow"),
            asked.say("speed", speech.unit(SPEED)),
            asked.say("session.counts"));
    for (Shot shot : shots) {
      Row row = row(shot);
      rows.add(
          row.time(),
          row.bow(),
          row.arrow(),
          row.speed(),
          row.counts() ? asked.say("yes") : row.reason());
      if (shot.figure().speedMps().isPresent()) {
        Point point =
            Point.of(
                shot.fired().toEpochMilli(),
                speech.in(SPEED, shot.figure().speedMps().getAsDouble()),
                row.time() + ", " + row.bow() + ", " + row.arrow() + ": " + row.speed());
        if (shot.counts()) {
          counting
              .computeIfAbsent(row.bow() + " · " + row.arrow(), k -> new ArrayList<>())
              .add(point);
        } else {
          aside.add(point);
        }
      }
    }
    List<Mark> marks = new ArrayList<>();
    counting.forEach(
        (name, points) -> marks.add(Mark.Points.of(name, Style.of(marks.size()), points)));
    if (!aside.isEmpty()) {
      marks.add(Mark.Points.of(asked.say("session.aside"), Style.ASIDE, aside));
    }
    return new Chart(
        "run",
        asked.say("session.run_title"),
        asked.say(marks.isEmpty() ? "session.run_empty" : "session.run_told"),
        Axis.dates(""),
        Axis.of(asked.say("speed", speech.unit(SPEED))),
        marks,
        rows.sheet());
  }

  private List<End> ends() {
    Map<Integer, List<Row>> ends = new LinkedHashMap<>();
    shots.forEach(shot -> ends.computeIfAbsent(shot.end(), k -> new ArrayList<>()).add(row(shot)));
    return ends.entrySet().stream()
        .map(end -> new End(asked.say("session.end", end.getKey()), end.getValue()))
        .toList();
  }

  private Row row(Shot shot) {
    return new Row(
        shot.shotId(),
        Days.time(shot.fired(), asked.zone()),
        shot.bow().map(BowState::bow).orElse(""),
        shot.arrow().map(Arrow::name).orElse(""),
        speech.figure(SPEED, shot.figure().speedMps().orElse(Double.NaN), uOf(shot)),
        shot.counts(),
        shot.reason());
  }

  private static double uOf(Shot shot) {
    return Math.hypot(
        shot.figure().speedUOwnMps().orElse(Double.NaN),
        shot.figure().speedUCommonMps().orElse(Double.NaN));
  }

  /** What is known of the gates. */
  static List<Fact> gates(Asked asked, Calibration gates) {
    Speech speech = asked.speech();
    return List.of(
        new Fact(
            asked.say("gates.spacing"),
            speech.figure(FINE_LENGTH, gates.spacingM(), gates.spacingUM())),
        new Fact(asked.say("gates.from_bow"), speech.plain(DISTANCE, gates.gatesFromBowM())));
  }

  static Optional<Calibrations.Entry> inForce(Asked asked, Session session, List<Shot> shots) {
    return asked
        .t()
        .calibrations()
        .inForce(
            session.station(),
            shots.isEmpty() ? session.startedMs() : shots.get(shots.size() - 1).fired());
  }
}
