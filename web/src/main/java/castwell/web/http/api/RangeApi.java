package castwell.web.http.api;

import castwell.capture.clock.OnwardClock;
import castwell.capture.command.Commands;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.daemon.Capture;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.Store;
import castwell.web.text.Speech;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What the range page shows, who shoots what, and sessions. */
public final class RangeApi {
  private final Store store;
  private final Commands commands;
  private final Capture capture;
  private final Views views;
  private final RangeView range;
  private final OnwardClock clock;

  public RangeApi(
      Store store,
      Commands commands,
      Capture capture,
      Views views,
      RangeView range,
      OnwardClock clock) {
    this.store = store;
    this.commands = commands;
    this.capture = capture;
    this.views = views;
    this.range = range;
    this.clock = clock;
  }

  public void route(JavalinConfig config) {
    config.routes.get("/api/range", this::range);
    config.routes.get("/api/stations", this::stations);
    config.routes.put("/api/tags", this::tag);
    config.routes.get("/api/sessions", this::sessions);
    config.routes.post("/api/sessions", this::beginSession);
    config.routes.put("/api/sessions/{name}/note", this::note);
  }

  private void range(Context ctx) {
    List<LinkState> links = capture.links();
    String asked = ctx.queryParam("station");
    String station = asked == null ? links.get(0).station() : known(capture, asked);
    Map<String, Object> view = store.read(t -> range.of(t, station, links, clock.instant()));
    view.put("stores", capture.stores().stream().map(Views::store).toList());
    view.put("clock", clock.sentence().map(Speech.TRADE::say).orElse(null));
    ctx.json(view);
  }

  /**
   * Each station's link, whether its passages get onto the disk, and how often each fault was
   * counted since the start.
   */
  private void stations(Context ctx) {
    var faults = capture.faults();
    Map<String, StoreState> stores =
        capture.stores().stream().collect(Collectors.toMap(StoreState::station, s -> s));
    ctx.json(
        capture.links().stream()
            .map(
                link -> {
                  Map<String, Object> view = views.link(link);
                  view.put("store", Views.store(stores.get(link.station())));
                  view.put("faults", faults.get(link.station()).all());
                  return view;
                })
            .toList());
  }

  private void tag(Context ctx) {
    Body body = Body.of(ctx, "station", "bow", "arrow");
    String station = known(capture, body.text("station"));
    commands.tag(station, body.optionalText("bow"), body.optionalText("arrow"), "page");
    ctx.json(store.read(t -> views.tags(t, station, clock.instant())));
  }

  private void sessions(Context ctx) {
    ctx.json(
        store.read(
            t ->
                t.sessions().all().stream()
                    .map(
                        session -> {
                          Map<String, Object> view = new LinkedHashMap<>();
                          view.put("station", session.station());
                          view.put("name", session.name());
                          view.put("started_at", session.startedMs().toString());
                          return view;
                        })
                    .toList()));
  }

  private void beginSession(Context ctx) {
    String station = known(capture, Body.of(ctx, "station").text("station"));
    commands.beginSession(station, "page");
    ctx.status(201);
    ctx.json(Map.of("station", station));
  }

  private void note(Context ctx) {
    String note = Body.of(ctx, "note").optionalText("note").orElse("");
    commands.note(ctx.pathParam("name"), note, "page");
    ctx.json(Map.of("note", note));
  }

  static String known(Capture capture, String station) {
    if (capture.links().stream().noneMatch(link -> link.station().equals(station))) {
      throw Refused.of(Why.NOT_FOUND, "refused.no_station", station);
    }
    return station;
  }
}
