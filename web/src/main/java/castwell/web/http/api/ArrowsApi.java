package castwell.web.http.api;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;

import castwell.capture.command.ArrowCommands;
import castwell.capture.command.Commands;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.store.Store;
import castwell.capture.store.Weighings.Weighing;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Arrows and their weighings. */
public final class ArrowsApi {
  private static final String[] MEASURES =
      Stream.concat(Stream.of("mass_gr"), MeasureFields.names(ArrowMeasure.values()))
          .toArray(String[]::new);

  private final Store store;
  private final Commands commands;
  private final Views views;

  public ArrowsApi(Store store, Commands commands, Views views) {
    this.store = store;
    this.commands = commands;
    this.views = views;
  }

  public void route(JavalinConfig config) {
    config.routes.get("/api/arrows", ctx -> ctx.json(store.read(views::arrows)));
    config.routes.post("/api/arrows", this::add);
    config.routes.put("/api/arrows/{name}", this::enter);
    config.routes.get("/api/arrows/{name}/weighings", this::weighings);
    config.routes.post("/api/arrows/{name}/weighings", this::weigh);
    config.routes.post("/api/arrows/{name}/weighings/{id}", this::decide);
    config.routes.post(
        "/api/arrows/{name}/retired",
        ctx -> NamedThings.retire(ctx, (name, yes) -> commands.arrows().retire(name, yes, "page")));
  }

  private void add(Context ctx) {
    Body body = NamedThings.fresh(ctx, MEASURES);
    String name = body.text("name");
    commands.arrows().add(name, massKg(body), MeasureFields.of(body, ArrowMeasure.values()));
    NamedThings.created(ctx, name);
  }

  private void enter(Context ctx) {
    Body body = Body.of(ctx, MEASURES);
    String name = ctx.pathParam("name");
    commands.arrows().enter(name, massKg(body), MeasureFields.of(body, ArrowMeasure.values()));
    ctx.json(Map.of("name", name));
  }

  private void weighings(Context ctx) {
    String name = ctx.pathParam("name");
    List<Map<String, Object>> rows =
        store.read(
            t ->
                t.weighings().of(ArrowCommands.arrow(t, name).id()).stream()
                    .map(ArrowsApi::weighing)
                    .toList());
    ctx.json(rows);
  }

  private static Map<String, Object> weighing(Weighing weighing) {
    return Map.of(
        "id", weighing.id(),
        "mass_gr", weighing.massKg() / KILOGRAMS_PER_GRAIN,
        "at", weighing.atMs().toString(),
        "counts", weighing.counts(),
        "why", weighing.why());
  }

  private void weigh(Context ctx) {
    String name = ctx.pathParam("name");
    commands.arrows().weigh(name, massKg(Body.of(ctx, "mass_gr")), "page");
    NamedThings.created(ctx, name);
  }

  private void decide(Context ctx) {
    Body body = Body.of(ctx, "set_aside", "why");
    boolean aside =
        body.truth("set_aside").orElseThrow(() -> Body.invalid("refused.field_set_aside"));
    String name = ctx.pathParam("name");
    long id = id(ctx.pathParam("id"));
    commands.arrows().decideWeighing(name, id, aside, body.optionalText("why").orElse(""), "page");
    ctx.json(Map.of("name", name, "id", id, "counts", !aside));
  }

  private static long id(String text) {
    if (!text.matches("\\d{1,18}")) {
      throw Body.invalid("refused.weighing_id", text);
    }
    return Long.parseLong(text);
  }

  private static double massKg(Body body) {
    return body.number("mass_gr") * KILOGRAMS_PER_GRAIN;
  }
}
