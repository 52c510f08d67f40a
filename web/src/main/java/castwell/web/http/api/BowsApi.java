package castwell.web.http.api;

import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.capture.command.BowCommands;
import castwell.capture.command.Commands;
import castwell.capture.measure.BowMeasure;
import castwell.capture.store.Store;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Stream;

/** Bows with their states. */
public final class BowsApi {
  private static final String[] STATE =
      Stream.of(
              Stream.of("state_on", "draw_weight_lb", "draw_length_in"),
              MeasureFields.names(BowMeasure.values()),
              Stream.of("done"))
          .flatMap(names -> names)
          .toArray(String[]::new);

  private final Store store;
  private final Commands commands;
  private final Views views;
  private final Clock clock;
  private final ZoneId zone;

  public BowsApi(Store store, Commands commands, Views views, Clock clock, ZoneId zone) {
    this.store = store;
    this.commands = commands;
    this.views = views;
    this.clock = clock;
    this.zone = zone;
  }

  public void route(JavalinConfig config) {
    config.routes.get(
        "/api/bows", ctx -> ctx.json(store.read(t -> views.bows(t, clock.instant()))));
    config.routes.post("/api/bows", this::addBow);
    config.routes.post("/api/bows/{name}/states", this::addState);
    config.routes.get("/api/bows/{name}/force-draw", this::forceDraw);
    config.routes.post("/api/bows/{name}/force-draw", this::addForceDraw);
    config.routes.post(
        "/api/bows/{name}/retired",
        ctx -> NamedThings.retire(ctx, (name, yes) -> commands.bows().retire(name, yes, "page")));
  }

  private void addBow(Context ctx) {
    Body body = NamedThings.fresh(ctx, STATE);
    String name = body.text("name");
    commands.bows().add(name, state(body));
    NamedThings.created(ctx, name);
  }

  private void addState(Context ctx) {
    Body body = Body.of(ctx, STATE);
    String name = ctx.pathParam("name");
    commands.bows().addState(name, state(body));
    NamedThings.created(ctx, name);
  }

  private void forceDraw(Context ctx) {
    String name = ctx.pathParam("name");
    ctx.json(
        store.read(
            t -> {
              var bow = BowCommands.bow(t, name);
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
                        point.scaled("let_down_lb", NEWTONS_PER_POUND)))
            .toList();
    commands.bows().addForceDraw(name, since(body), points, "page");
    NamedThings.created(ctx, name);
  }

  private BowCommands.State state(Body body) {
    return new BowCommands.State(
        since(body),
        body.number("draw_weight_lb") * NEWTONS_PER_POUND,
        body.number("draw_length_in") * METRES_PER_INCH,
        MeasureFields.of(body, BowMeasure.values()),
        body.optionalText("done").orElse(""));
  }

  private Instant since(Body body) {
    return at(body.optionalText("state_on").orElse(null));
  }

  private Instant at(String date) {
    return date == null ? clock.instant() : Dates.instant("state_on", date, zone);
  }
}
