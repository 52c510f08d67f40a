package castwell.web.http.api;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;

import castwell.capture.command.ArrowCommands;
import castwell.capture.command.Commands;
import castwell.capture.store.Store;
import castwell.capture.store.Weighings.Weighing;
import castwell.capture.view.rack.ArrowEntry;
import castwell.capture.view.rack.ArrowRequest;
import castwell.capture.view.rack.ArrowView;
import castwell.capture.view.rack.Named;
import castwell.capture.view.rack.RetireRequest;
import castwell.capture.view.rack.Retired;
import castwell.capture.view.rack.WeighRequest;
import castwell.capture.view.rack.WeighingDecided;
import castwell.capture.view.rack.WeighingRequest;
import castwell.capture.view.rack.WeighingView;
import castwell.web.http.route.Body;
import castwell.web.http.route.Route;
import io.javalin.http.Context;
import java.util.List;

/** Arrows and their weighings. */
public final class ArrowsApi {
  private final Store store;
  private final Commands commands;
  private final Views views;

  public ArrowsApi(Store store, Commands commands, Views views) {
    this.store = store;
    this.commands = commands;
    this.views = views;
  }

  public List<Route> routes() {
    return List.of(
        Route.get("/api/arrows", "All arrows")
            .answersAll(ArrowView.class, ctx -> store.read(views::arrows)),
        Route.post("/api/arrows", "Adds an arrow")
            .takes(ArrowRequest.class)
            .creates(Named.class, this::add),
        Route.put("/api/arrows/{name}", "Enters an arrow as it is now")
            .takes(ArrowEntry.class)
            .answers(Named.class, this::enter),
        Route.get("/api/arrows/{name}/weighings", "Every time an arrow was put on the scale")
            .answersAll(WeighingView.class, this::weighings),
        Route.post("/api/arrows/{name}/weighings", "Enters what a scale says of an arrow")
            .takes(WeighRequest.class)
            .creates(Named.class, this::weigh),
        Route.post("/api/arrows/{name}/weighings/{id}", "Sets a weighing aside, or brings it back")
            .takes(WeighingRequest.class)
            .answers(WeighingDecided.class, this::decide),
        Route.post("/api/arrows/{name}/retired", "Takes an arrow out of use, or up again")
            .takes(RetireRequest.class)
            .answers(Retired.class, this::retire));
  }

  private Named add(Context ctx, ArrowRequest request) {
    ArrowEntry entry = request.entry();
    commands.arrows().add(request.name(), massKg(entry), entry.measures());
    return new Named(request.name());
  }

  private Named enter(Context ctx, ArrowEntry entry) {
    String name = ctx.pathParam("name");
    commands.arrows().enter(name, massKg(entry), entry.measures());
    return new Named(name);
  }

  private List<WeighingView> weighings(Context ctx) {
    String name = ctx.pathParam("name");
    return store.read(
        t ->
            t.weighings().of(ArrowCommands.arrow(t, name).id()).stream()
                .map(ArrowsApi::weighing)
                .toList());
  }

  private static WeighingView weighing(Weighing weighing) {
    return new WeighingView(
        weighing.id(),
        weighing.massKg() / KILOGRAMS_PER_GRAIN,
        weighing.atMs(),
        weighing.counts(),
        weighing.why());
  }

  private Named weigh(Context ctx, WeighRequest request) {
    String name = ctx.pathParam("name");
    commands.arrows().weigh(name, request.massGr() * KILOGRAMS_PER_GRAIN, "page");
    return new Named(name);
  }

  private WeighingDecided decide(Context ctx, WeighingRequest request) {
    String name = ctx.pathParam("name");
    long id = id(ctx.pathParam("id"));
    commands
        .arrows()
        .decideWeighing(name, id, request.setAside(), request.why().orElse(""), "page");
    return new WeighingDecided(name, id, !request.setAside());
  }

  private Retired retire(Context ctx, RetireRequest request) {
    String name = ctx.pathParam("name");
    commands.arrows().retire(name, request.retired(), "page");
    return new Retired(name, request.retired());
  }

  private static long id(String text) {
    if (!text.matches("\\d{1,18}")) {
      throw Body.invalid("refused.weighing_id", text);
    }
    return Long.parseLong(text);
  }

  private static double massKg(ArrowEntry entry) {
    return entry.massGr() * KILOGRAMS_PER_GRAIN;
  }
}
