package castwell.web.workbench;

import static castwell.web.unit.Dimension.DISTANCE;
import static castwell.web.unit.Dimension.FINE_LENGTH;

import castwell.analysis.gates.GateFindings;
import castwell.analysis.speed.Calibration;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.gates.SessionGates;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Shot;
import castwell.capture.store.Weather.Air;
import castwell.web.chart.Chart;
import castwell.web.chart.FigureTable;
import castwell.web.report.ReportFormat;
import castwell.web.report.session.SessionReport;
import castwell.web.text.Speech;
import castwell.web.workbench.BowPage.Fact;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The page of one outing: every shot, what doesn't count and why, and the gates it was shot
 * through.
 */
public final class SessionPage {
  private final PageRequest request;
  private final Speech speech;
  private final Session session;
  private final List<Shot> shots;

  /**
   * @param list one page of its shots
   * @param gatesTold the figures that its arrows tell of the gates
   * @param fronts whether the tails are corrected to the fronts
   * @param bows the bows that a shot can be retagged to
   */
  public record View(
      String name,
      String station,
      String note,
      List<String> answer,
      List<Fact> facts,
      Chart chart,
      SessionShots.Listed list,
      List<String> bows,
      List<String> arrows,
      Optional<FigureTable> gatesTold,
      Fronts fronts,
      Gates gates) {}

  /**
   * Whether the tails are corrected to the fronts, where that is of any matter.
   *
   * @param told "" where it isn't
   */
  public record Fronts(String told, boolean trusted) {}

  /**
   * The gates as this session's shots were derived by, and what another measurement of them would
   * change.
   *
   * @param trial the mean of each cell before and after; empty where nothing was tried
   * @param refused why there is no trial, "" otherwise
   * @param from the first instant of the session; the other end is that of the next one
   */
  public record Gates(
      List<Fact> now,
      NumberInput spacing,
      NumberInput spacingU,
      Optional<FigureTable> trial,
      String refused,
      String from,
      String to,
      String spacingMm,
      String spacingUMm) {}

  private SessionPage(PageRequest request) {
    this.request = request;
    this.speech = request.speech();
    String name = request.named("name");
    this.session =
        request
            .t()
            .sessions()
            .byName(name)
            .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "session.none", name));
    this.shots = request.t().shots().ofSession(name);
  }

  public static Page of(PageRequest request, GatesTrial.OnTrial trial) {
    SessionPage page = new SessionPage(request);
    return new Page(MenuEntry.SESSIONS, "session", page.session.name(), page.view(trial));
  }

  private View view(GatesTrial.OnTrial trial) {
    Optional<GateFindings> found = SessionGates.of(request.t(), session);
    SessionReport.Told told =
        SessionReport.told(request.t(), request.zone(), session, found, new ReportFormat(speech));
    SessionShots list = new SessionShots(request, shots, told.strays());
    return new View(
        session.name(),
        session.station(),
        request.t().notes().of(session.id()).orElse(""),
        told.sentences(),
        conditions(),
        list.chart(),
        list.listed(request.number("from")),
        request.t().rack().bowNames().stream().map(Rack.Named::name).toList(),
        request.t().rack().arrows().stream().map(Arrow::name).toList(),
        found.map(gates -> GatesTold.table(speech, gates)),
        fronts(found),
        new GatesTrial(request, session, shots, trial).gates());
  }

  private Fronts fronts(Optional<GateFindings> found) {
    boolean trusted = request.t().figures().areTailsCorrected(session.id());
    boolean matters = trusted || found.filter(GateFindings::frontOverTailNamed).isPresent();
    return new Fronts(matters ? told(trusted) : "", trusted);
  }

  private String told(boolean trusted) {
    if (!trusted) {
      return request.say("gates_told.both_trusted");
    }
    boolean decided = request.t().frontsDecisions().of(session.id()).isPresent();
    return request.say(decided ? "gates_told.fronts_decided" : "gates_told.fronts_trusted");
  }

  private List<Fact> conditions() {
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(
            request.say("session.began"), Days.withMinute(session.startedMs(), request.zone())));
    facts.add(new Fact(request.say("session.station"), session.station()));
    Air air = request.t().weather().ofSession(session.name());
    facts.add(new Fact(request.say("session.air"), plain(air.celsius(), 1, " °C")));
    facts.add(new Fact(request.say("session.humidity"), plain(air.relativeHumidity(), 100, " %")));
    OptionalDouble middle =
        shots.stream()
            .flatMap(shot -> shot.byGates().stream())
            .mapToDouble(Shot.ByGates::middleFromBowM)
            .max();
    facts.add(new Fact(request.say("session.distance"), speech.plain(DISTANCE, middle)));
    return facts;
  }

  private String plain(OptionalDouble value, double factor, String unit) {
    return value.isPresent()
        ? Math.round(value.getAsDouble() * factor) + unit
        : request.say("figure.not_known");
  }

  /** What is known of the gates. */
  static List<Fact> gates(PageRequest request, Calibration gates) {
    Speech speech = request.speech();
    return List.of(
        new Fact(
            request.say("gates.spacing"),
            speech.figure(FINE_LENGTH, gates.spacingM(), gates.spacingUM())
                + (gates.isMeasured() ? "" : " " + request.say("gates.unmeasured"))),
        new Fact(request.say("gates.from_bow"), speech.plain(DISTANCE, gates.gatesFromBowM())));
  }

  static Optional<Calibrations.Entry> inForce(
      PageRequest request, Session session, List<Shot> shots) {
    return request
        .t()
        .calibrations()
        .inForce(
            session.station(),
            shots.isEmpty() ? session.startedMs() : shots.get(shots.size() - 1).fired());
  }
}
