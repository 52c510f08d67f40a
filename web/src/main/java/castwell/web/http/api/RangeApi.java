package castwell.web.http.api;

import castwell.capture.clock.OnwardClock;
import castwell.capture.command.Commands;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.daemon.Capture;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.Store;
import castwell.capture.view.range.NoteRequest;
import castwell.capture.view.range.NoteView;
import castwell.capture.view.range.RangeView;
import castwell.capture.view.range.SessionView;
import castwell.capture.view.station.StationNamed;
import castwell.capture.view.station.StationRequest;
import castwell.capture.view.station.StationView;
import castwell.capture.view.station.TagsRequest;
import castwell.capture.view.station.TagsView;
import castwell.capture.wire.Fault;
import castwell.web.http.route.Route;
import castwell.web.text.Speech;
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
  private final RangeViews range;
  private final OnwardClock clock;

  public RangeApi(
      Store store,
      Commands commands,
      Capture capture,
      Views views,
      RangeViews range,
      OnwardClock clock) {
    this.store = store;
    this.commands = commands;
    this.capture = capture;
    this.views = views;
    this.range = range;
    this.clock = clock;
  }

  public List<Route> routes() {
    return List.of(
        Route.get("/api/range", "Everything that the range page shows")
            .text("station", "whose range; the first one's otherwise")
            .answers(RangeView.class, this::range),
        Route.get("/api/stations", "Every station: its board, its place on the disk, its faults")
            .answersAll(StationView.class, ctx -> stations()),
        Route.put("/api/tags", "Says who shoots what from now on")
            .takes(TagsRequest.class)
            .answers(TagsView.class, (ctx, request) -> tag(request)),
        Route.get("/api/sessions", "All sessions, the last first")
            .answersAll(SessionView.class, ctx -> sessions()),
        Route.post("/api/sessions", "Begins a session")
            .takes(StationRequest.class)
            .creates(StationNamed.class, (ctx, request) -> beginSession(request)),
        Route.put("/api/sessions/{name}/note", "Notes something of a session")
            .takes(NoteRequest.class)
            .answers(NoteView.class, this::note));
  }

  private RangeView range(Context ctx) {
    List<LinkState> links = capture.links();
    String asked = ctx.queryParam("station");
    String station = asked == null ? links.get(0).station() : known(capture, asked);
    List<StoreState> stores = capture.stores();
    return store.read(
        t ->
            range.of(
                t,
                station,
                links,
                stores,
                clock.sentence().map(Speech.TRADE::say),
                clock.instant()));
  }

  /**
   * Each station's link, whether its passages get onto the disk, and how often each fault was
   * counted since the start.
   */
  private List<StationView> stations() {
    var faults = capture.faults();
    Map<String, StoreState> stores =
        capture.stores().stream().collect(Collectors.toMap(StoreState::station, s -> s));
    return capture.links().stream()
        .map(
            link ->
                new StationView(
                    Views.link(link),
                    Views.store(stores.get(link.station())),
                    byName(faults.get(link.station()).all())))
        .toList();
  }

  private static Map<String, Long> byName(Map<Fault, Long> counts) {
    Map<String, Long> named = new LinkedHashMap<>();
    counts.forEach((fault, count) -> named.put(fault.name(), count));
    return named;
  }

  private TagsView tag(TagsRequest request) {
    String station = known(capture, request.station());
    commands.tag(station, request.bow(), request.arrow(), "page");
    return store.read(t -> views.tags(t, station, clock.instant()));
  }

  private List<SessionView> sessions() {
    return store.read(
        t ->
            t.sessions().all().stream()
                .map(s -> new SessionView(s.station(), s.name(), s.startedMs()))
                .toList());
  }

  private StationNamed beginSession(StationRequest request) {
    String station = known(capture, request.station());
    commands.beginSession(station, "page");
    return new StationNamed(station);
  }

  private NoteView note(Context ctx, NoteRequest request) {
    String note = request.note().orElse("");
    commands.note(ctx.pathParam("name"), note, "page");
    return new NoteView(note);
  }

  static String known(Capture capture, String station) {
    if (capture.links().stream().noneMatch(link -> link.station().equals(station))) {
      throw Refused.of(Why.NOT_FOUND, "refused.no_station", station);
    }
    return station;
  }
}
