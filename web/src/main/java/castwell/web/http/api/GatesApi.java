package castwell.web.http.api;

import castwell.analysis.gates.GateFindings;
import castwell.analysis.speed.Calibration;
import castwell.capture.command.Commands;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.gates.SessionGates;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Store;
import castwell.capture.view.gates.FrontsRequest;
import castwell.capture.view.gates.SessionGatesView;
import castwell.capture.view.station.BudgetView;
import castwell.capture.view.station.CalibrationEntered;
import castwell.capture.view.station.CalibrationRequest;
import castwell.capture.view.station.CalibrationView;
import castwell.capture.view.station.StationBudget;
import castwell.web.http.route.Body;
import castwell.web.http.route.Route;
import castwell.web.report.GatesWords;
import castwell.web.report.ReportFormat;
import castwell.web.settings.Settings;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** How a station's gates stand, and since when. */
public final class GatesApi {
  private static final String PATH = "/api/stations/{station}/calibrations";

  private static final String BUDGET = "/api/stations/{station}/budget";

  private final Store store;
  private final Commands commands;
  private final Clock clock;
  private final ZoneId zone;

  public GatesApi(Store store, Commands commands, Clock clock, ZoneId zone) {
    this.store = store;
    this.commands = commands;
    this.clock = clock;
    this.zone = zone;
  }

  public List<Route> routes() {
    return List.of(
        Route.get(PATH, "How a station's gates stood, and since when")
            .answersAll(CalibrationView.class, this::all),
        Route.post(PATH, "Enters how a station's gates stand, from a moment on")
            .takes(CalibrationRequest.class)
            .creates(CalibrationEntered.class, this::enter),
        Route.get("/api/sessions/{name}/gates", "What a session's shots tell of its gates")
            .answers(SessionGatesView.class, ctx -> told(ctx.pathParam("name"))),
        Route.post(
                "/api/sessions/{name}/fronts",
                "Decides whether a session's tails are corrected to its fronts")
            .takes(FrontsRequest.class)
            .answers(SessionGatesView.class, this::decide),
        Route.get(BUDGET, "What makes a speed uncertain at a station's gates, the largest first")
            .answersAll(BudgetView.class, this::budget));
  }

  private List<CalibrationView> all(Context ctx) {
    String station = ctx.pathParam("station");
    return store.read(t -> t.calibrations().of(station).stream().map(GatesApi::view).toList());
  }

  private List<BudgetView> budget(Context ctx) {
    String station = ctx.pathParam("station");
    return store
        .read(t -> StationBudget.of(t, station, clock.instant()))
        .map(StationBudget::rows)
        .orElseThrow(() -> noStation(station));
  }

  private static Refused noStation(String station) {
    return Refused.of(Why.NOT_FOUND, "refused.no_station", station);
  }

  /** What isn't given stays as it was; "from" and "to" tell which shots it covers. */
  private CalibrationEntered enter(Context ctx, CalibrationRequest request) {
    String station = ctx.pathParam("station");
    Instant from =
        request.from().map(text -> Dates.instant("from", text, zone)).orElseGet(clock::instant);
    Calibration now =
        store
            .read(t -> t.calibrations().inForce(station, from))
            .map(Calibrations.Entry::calibration)
            .orElseThrow(() -> noStation(station));
    Optional<Instant> to = request.to().map(text -> Dates.instant("to", text, zone));
    int covered = commands.calibrate(station, from, to, changed(now, request), "page");
    return new CalibrationEntered(station, from, covered);
  }

  private SessionGatesView decide(Context ctx, FrontsRequest request) {
    String name = ctx.pathParam("name");
    commands.sessions().decideFronts(name, request.frontsTrusted(), "page");
    return told(name);
  }

  private SessionGatesView told(String name) {
    return store.read(
        t -> {
          Session session =
              t.sessions()
                  .byName(name)
                  .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_session", name));
          Optional<GateFindings> found = SessionGates.of(t, session);
          return SessionGatesView.of(
              name,
              session.station(),
              found,
              t.figures().areTailsCorrected(session.id()),
              GatesWords.of(found, ReportFormat.TRADE));
        });
  }

  private static Calibration changed(Calibration now, CalibrationRequest request) {
    try {
      Calibration spaced =
          now.spaced(
              request.spacingMm().orElse(now.spacingM() * 1e3) / 1e3,
              request.spacingUMm().orElse(now.spacingUM() * 1e3) / 1e3);
      return new Calibration(
          spaced.spacingM(),
          spaced.spacingUM(),
          request.triggerScatterMm().orElse(now.triggerScatterM() * 1e3) / 1e3,
          request.gatesFromBowM().orElse(now.gatesFromBowM()),
          request.oscillator().map(Settings::oscillator).orElse(now.oscillator()),
          spaced.isMeasured(),
          spaced.errors());
    } catch (IllegalArgumentException e) {
      throw Body.invalid("refused.cant_be", e.getMessage());
    }
  }

  private static CalibrationView view(Calibrations.Entry entry) {
    Calibration gates = entry.calibration();
    return new CalibrationView(
        entry.id(),
        entry.validFrom(),
        entry.validTo(),
        gates.spacingM() * 1e3,
        gates.spacingUM() * 1e3,
        gates.triggerScatterM() * 1e3,
        gates.gatesFromBowM(),
        gates.oscillator(),
        entry.entered(),
        entry.enteredBy(),
        gates.isMeasured());
  }
}
