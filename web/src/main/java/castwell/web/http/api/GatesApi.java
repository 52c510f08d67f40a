package castwell.web.http.api;

import castwell.analysis.speed.Calibration;
import castwell.capture.command.Commands;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Store;
import castwell.web.settings.Settings;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** How a station's gates stand, and since when. */
public final class GatesApi {
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

  public void route(JavalinConfig config) {
    config.routes.get("/api/stations/{station}/calibrations", this::all);
    config.routes.post("/api/stations/{station}/calibrations", this::enter);
  }

  private void all(Context ctx) {
    String station = ctx.pathParam("station");
    ctx.json(store.read(t -> t.calibrations().of(station).stream().map(GatesApi::view).toList()));
  }

  /** What isn't given stays as it was; "from" and "to" tell which shots it covers. */
  private void enter(Context ctx) {
    Body body =
        Body.of(
            ctx,
            "from",
            "to",
            "spacing_mm",
            "spacing_u_mm",
            "trigger_scatter_mm",
            "gates_from_bow_m",
            "oscillator");
    String station = ctx.pathParam("station");
    Instant from =
        body.optionalText("from")
            .map(text -> Dates.instant("from", text, zone))
            .orElseGet(clock::instant);
    Calibration now =
        store
            .read(t -> t.calibrations().inForce(station, from))
            .map(Calibrations.Entry::calibration)
            .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_station", station));
    Optional<Instant> to = body.optionalText("to").map(text -> Dates.instant("to", text, zone));
    int covered = commands.calibrate(station, from, to, changed(now, body), "page");
    ctx.status(201);
    ctx.json(Map.of("station", station, "from", from.toString(), "shots_derived_anew", covered));
  }

  private static Calibration changed(Calibration now, Body body) {
    try {
      return new Calibration(
          body.optionalNumber("spacing_mm").orElse(now.spacingM() * 1e3) / 1e3,
          body.optionalNumber("spacing_u_mm").orElse(now.spacingUM() * 1e3) / 1e3,
          body.optionalNumber("trigger_scatter_mm").orElse(now.triggerScatterM() * 1e3) / 1e3,
          body.optionalNumber("gates_from_bow_m").orElse(now.gatesFromBowM()),
          body.optionalText("oscillator").map(Settings::oscillator).orElse(now.oscillator()));
    } catch (IllegalArgumentException e) {
      throw Body.invalid("refused.cant_be", e.getMessage());
    }
  }

  private static Map<String, Object> view(Calibrations.Entry entry) {
    Calibration gates = entry.calibration();
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("calibration", entry.id());
    view.put("from", entry.validFrom().toString());
    view.put("to", entry.validTo().map(Instant::toString).orElse(null));
    view.put("spacing_mm", gates.spacingM() * 1e3);
    view.put("spacing_u_mm", gates.spacingUM() * 1e3);
    view.put("trigger_scatter_mm", gates.triggerScatterM() * 1e3);
    view.put("gates_from_bow_m", gates.gatesFromBowM());
    view.put("oscillator", gates.oscillator().name().toLowerCase(Locale.ROOT));
    view.put("entered_at", entry.entered().toString());
    view.put("entered_by", entry.enteredBy());
    return view;
  }
}
