package castwell.web.http.api;

import castwell.analysis.compare.ShotOrder;
import castwell.capture.command.PlanCommand;
import castwell.capture.command.PlanCommands;
import castwell.capture.command.PlanCommands.Wanted;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.daemon.Capture;
import castwell.capture.store.Plans.Plan;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.web.report.plan.PlanDesign;
import castwell.web.report.plan.PlanReport;
import castwell.web.report.plan.PlanReport.Wish;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Plans: what is to be shot in which order, and how it goes on. */
public final class PlansApi {
  /** As many turns as a plan may have, each with two long names. */
  private static final int LARGEST_BODY = 512 * 1024;

  private final Store store;
  private final PlanCommands plans;
  private final Capture capture;
  private final ZoneId zone;

  public PlansApi(Store store, PlanCommands plans, Capture capture, ZoneId zone) {
    this.store = store;
    this.plans = plans;
    this.capture = capture;
    this.zone = zone;
  }

  public void route(JavalinConfig config) {
    config.routes.get("/api/plans", this::ofStation);
    config.routes.post("/api/plans", this::make);
    config.routes.get("/api/plans/{plan}", this::plan);
    config.routes.post("/api/plans/{plan}/events", this::say);
  }

  private void ofStation(Context ctx) {
    String asked = ctx.queryParam("station");
    String station =
        RangeApi.known(capture, asked == null ? capture.links().get(0).station() : asked);
    ctx.json(
        store.read(
            t -> t.plans().ofStation(station).stream().map(p -> PlanView.of(t, p)).toList()));
  }

  private void plan(Context ctx) {
    long id = id(ctx);
    ctx.json(store.read(t -> PlanView.whole(t, find(t, id))));
  }

  private void make(Context ctx) {
    Body body = Body.of(ctx, LARGEST_BODY, "station", "name", "turns", "from");
    String station = RangeApi.known(capture, body.text("station"));
    if (body.has("turns") == body.has("from")) {
      throw Body.invalid("refused.plan_from");
    }
    Optional<PlanDesign> design =
        body.optionalObject(
                "from", "bow", "control", "change_fps", "power", "sd_fps", "arrow", "seed")
            .map(PlansApi::wish)
            .map(wish -> store.read(t -> PlanDesign.of(t, zone, wish)));
    List<Wanted> turns =
        design
            .map(PlansApi::turns)
            .orElseGet(
                () ->
                    body.objects("turns", "bow", "arrow").stream()
                        .map(turn -> new Wanted(turn.text("bow"), turn.text("arrow")))
                        .toList());
    String name =
        body.optionalText("name")
            .orElseGet(() -> design.map(d -> "Rework of " + d.bows().get(0)).orElse("By hand"));
    long id = plans.make(station, name, turns, "page");
    Map<String, Object> view = store.read(t -> PlanView.whole(t, find(t, id)));
    design.ifPresent(d -> view.put("sentences", PlanReport.of(d).sentences()));
    ctx.status(201);
    ctx.json(view);
  }

  private static Wish wish(Body from) {
    return Wish.of(
        from.text("bow"),
        from.textList("control"),
        from.optionalNumber("change_fps"),
        from.optionalNumber("power"),
        from.optionalNumber("sd_fps"),
        from.textList("arrow"),
        from.optionalNumber("seed"));
  }

  private static List<Wanted> turns(PlanDesign design) {
    return design.order().stream()
        .map((ShotOrder.Turn turn) -> new Wanted(turn.bow(), turn.arrow()))
        .toList();
  }

  private void say(Context ctx) {
    Body body = Body.of(ctx, "do", "turn");
    long id = id(ctx);
    plans.say(id, word(body.text("do")), body.optionalWhole("turn"), "page");
    ctx.json(store.read(t -> PlanView.of(t, find(t, id))));
  }

  private static PlanCommand word(String said) {
    return Arrays.stream(PlanCommand.values())
        .filter(word -> word.word().equals(said))
        .findFirst()
        .orElseThrow(
            () ->
                Body.invalid(
                    "refused.field_do",
                    Arrays.stream(PlanCommand.values())
                        .map(PlanCommand::word)
                        .collect(Collectors.joining(", "))));
  }

  private static long id(Context ctx) {
    String id = ctx.pathParam("plan");
    if (!id.matches("\\d{1,18}")) {
      throw Refused.of(Why.NOT_FOUND, "refused.plan_number");
    }
    return Long.parseLong(id);
  }

  private static Plan find(Transaction t, long id) {
    return t.plans().byId(id).orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_plan", id));
  }
}
