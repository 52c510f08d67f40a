package castwell.web.http;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_POUND;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.capture.daemon.Desk;
import castwell.capture.daemon.RackDesk;
import castwell.capture.store.Rack.Measures;
import castwell.capture.store.Store;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

/** Bows with their states, and arrows. */
final class RackApi {
  private static final String[] STATE = {
    "state_on",
    "draw_weight_lb",
    "draw_length_in",
    "nock_to_nock_in",
    "string_follow_in",
    "brace_height_in",
    "mass_lb",
    "wood",
    "tip_width_mm",
    "string_mass_gr",
    "done"
  };
  private static final String[] ARROW = {"mass_gr", "length_in", "diameter_in", "point", "note"};

  private final Store store;
  private final Desk desk;
  private final Views views;
  private final Clock clock;
  private final ZoneId zone;

  RackApi(Store store, Desk desk, Views views, Clock clock, ZoneId zone) {
    this.store = store;
    this.desk = desk;
    this.views = views;
    this.clock = clock;
    this.zone = zone;
  }

  void route(JavalinConfig config) {
    config.routes.get(
        "/api/bows", ctx -> ctx.json(store.read(t -> views.bows(t, clock.instant()))));
    config.routes.post("/api/bows", this::addBow);
    config.routes.post("/api/bows/{name}/states", this::addState);
    config.routes.get("/api/bows/{name}/force-draw", this::forceDraw);
    config.routes.post("/api/bows/{name}/force-draw", this::addForceDraw);
    config.routes.get("/api/arrows", ctx -> ctx.json(store.read(views::arrows)));
    config.routes.post("/api/arrows", this::addArrow);
    config.routes.put("/api/arrows/{name}", this::enterArrow);
    config.routes.post("/api/arrows/{name}/weighings", this::weigh);
    config.routes.post(
        "/api/bows/{name}/retired",
        ctx -> retire(ctx, (name, yes) -> desk.rack().retireBow(name, yes, "page")));
    config.routes.post(
        "/api/arrows/{name}/retired",
        ctx -> retire(ctx, (name, yes) -> desk.rack().retireArrow(name, yes, "page")));
  }

  private void addBow(Context ctx) {
    Body body = Body.of(ctx, fields("name", STATE));
    String name = body.text("name");
    desk.rack().addBow(name, state(body));
    created(ctx, name);
  }

  private void addState(Context ctx) {
    Body body = Body.of(ctx, STATE);
    String name = ctx.pathParam("name");
    desk.rack().addState(name, state(body));
    created(ctx, name);
  }

  private void addArrow(Context ctx) {
    Body body = Body.of(ctx, fields("name", ARROW));
    String name = body.text("name");
    desk.rack().addArrow(name, arrow(body));
    created(ctx, name);
  }

  private void enterArrow(Context ctx) {
    Body body = Body.of(ctx, ARROW);
    String name = ctx.pathParam("name");
    desk.rack().enterArrow(name, arrow(body));
    ctx.json(Map.of("name", name));
  }

  private void weigh(Context ctx) {
    String name = ctx.pathParam("name");
    double grains = Body.of(ctx, "mass_gr").number("mass_gr");
    desk.rack().weigh(name, grains * KILOGRAMS_PER_GRAIN, "page");
    created(ctx, name);
  }

  private static void retire(Context ctx, BiConsumer<String, Boolean> say) {
    String name = ctx.pathParam("name");
    boolean retired =
        Body.of(ctx, "retired")
            .truth("retired")
            .orElseThrow(() -> Body.invalid("The field \"retired\" is true or false."));
    say.accept(name, retired);
    ctx.json(Map.of("name", name, "retired", retired));
  }

  private static void created(Context ctx, String name) {
    ctx.status(201);
    ctx.json(Map.of("name", name));
  }

  private void forceDraw(Context ctx) {
    String name = ctx.pathParam("name");
    ctx.json(
        store.read(
            t -> {
              var bow = RackDesk.bow(t, name);
              Instant at = at(ctx.queryParam("state_on"));
              return t.rack()
                  .state(bow.id(), at)
                  .map(
                      state -> views.forceDraw(state, t.forceDraws().last(bow.id(), state.since())))
                  .orElseThrow();
            }));
  }

  private void addForceDraw(Context ctx) {
    Body body = Body.of(ctx, "state_on", "points");
    String name = ctx.pathParam("name");
    List<Point> points =
        body.objects("points", "draw_length_in", "draw_force_lb", "let_down_lb").stream()
            .map(
                point ->
                    new Point(
                        point.number("draw_length_in") * METRES_PER_INCH,
                        point.number("draw_force_lb") * NEWTONS_PER_POUND,
                        scaled(point, "let_down_lb", NEWTONS_PER_POUND)))
            .toList();
    desk.rack().addForceDraw(name, since(body), points, "page");
    created(ctx, name);
  }

  private static String[] fields(String first, String[] others) {
    return Stream.concat(Stream.of(first), Stream.of(others)).toArray(String[]::new);
  }

  private RackDesk.State state(Body body) {
    return new RackDesk.State(
        since(body),
        body.number("draw_weight_lb") * NEWTONS_PER_POUND,
        body.number("draw_length_in") * METRES_PER_INCH,
        new Measures(
            scaled(body, "nock_to_nock_in", METRES_PER_INCH),
            scaled(body, "string_follow_in", METRES_PER_INCH),
            scaled(body, "brace_height_in", METRES_PER_INCH),
            scaled(body, "mass_lb", KILOGRAMS_PER_POUND),
            body.optionalText("wood"),
            scaled(body, "tip_width_mm", 1e-3),
            scaled(body, "string_mass_gr", KILOGRAMS_PER_GRAIN)),
        body.optionalText("done").orElse(""));
  }

  private static RackDesk.ArrowMeasures arrow(Body body) {
    return new RackDesk.ArrowMeasures(
        body.number("mass_gr") * KILOGRAMS_PER_GRAIN,
        scaled(body, "length_in", METRES_PER_INCH),
        scaled(body, "diameter_in", METRES_PER_INCH),
        body.optionalText("point"),
        body.optionalText("note"));
  }

  private static OptionalDouble scaled(Body body, String field, double unit) {
    OptionalDouble value = body.optionalNumber(field);
    return value.isPresent()
        ? OptionalDouble.of(value.getAsDouble() * unit)
        : OptionalDouble.empty();
  }

  private Instant since(Body body) {
    return at(body.optionalText("state_on").orElse(null));
  }

  private Instant at(String date) {
    return date == null ? clock.instant() : Dates.instant("state_on", date, zone);
  }
}
