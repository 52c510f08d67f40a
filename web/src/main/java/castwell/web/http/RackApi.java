package castwell.web.http;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.capture.daemon.Desk;
import castwell.capture.store.Store;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.OptionalDouble;

/** Bows with their states, and arrows. */
final class RackApi {
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
    config.routes.get("/api/arrows", ctx -> ctx.json(store.read(views::arrows)));
    config.routes.post("/api/arrows", this::addArrow);
    config.routes.put("/api/arrows/{name}", this::enterArrow);
  }

  private void addBow(Context ctx) {
    Body body = Body.of(ctx, "name", "draw_weight_lb", "draw_length_in", "done", "state_on");
    String name = body.text("name");
    desk.rack().addBow(name, since(body), drawWeightN(body), drawLengthM(body), done(body));
    created(ctx, name);
  }

  private void addState(Context ctx) {
    Body body = Body.of(ctx, "draw_weight_lb", "draw_length_in", "done", "state_on");
    String name = ctx.pathParam("name");
    desk.rack().addState(name, since(body), drawWeightN(body), drawLengthM(body), done(body));
    created(ctx, name);
  }

  private void addArrow(Context ctx) {
    Body body = Body.of(ctx, "name", "mass_gr", "length_in", "diameter_in");
    String name = body.text("name");
    desk.rack()
        .addArrow(name, massKg(body), metres(body, "length_in"), metres(body, "diameter_in"));
    created(ctx, name);
  }

  private void enterArrow(Context ctx) {
    Body body = Body.of(ctx, "mass_gr", "length_in", "diameter_in");
    String name = ctx.pathParam("name");
    desk.rack()
        .enterArrow(name, massKg(body), metres(body, "length_in"), metres(body, "diameter_in"));
    ctx.json(Map.of("name", name));
  }

  private static void created(Context ctx, String name) {
    ctx.status(201);
    ctx.json(Map.of("name", name));
  }

  private static double drawWeightN(Body body) {
    return body.number("draw_weight_lb") * NEWTONS_PER_POUND;
  }

  private static double drawLengthM(Body body) {
    return body.number("draw_length_in") * METRES_PER_INCH;
  }

  private static double massKg(Body body) {
    return body.number("mass_gr") * KILOGRAMS_PER_GRAIN;
  }

  private static OptionalDouble metres(Body body, String inches) {
    OptionalDouble value = body.optionalNumber(inches);
    return value.isPresent()
        ? OptionalDouble.of(value.getAsDouble() * METRES_PER_INCH)
        : OptionalDouble.empty();
  }

  private static String done(Body body) {
    return body.optionalText("done").orElse("");
  }

  private Instant since(Body body) {
    return body.optionalText("state_on")
        .map(text -> Dates.instant("state_on", text, zone))
        .orElseGet(clock::instant);
  }
}
