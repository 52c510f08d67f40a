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
import castwell.capture.view.plan.DesignRequest;
import castwell.capture.view.plan.PlanEventRequest;
import castwell.capture.view.plan.PlanRequest;
import castwell.capture.view.plan.PlanView;
import castwell.capture.view.plan.TurnRequest;
import castwell.capture.view.plan.WholePlan;
import castwell.web.http.route.Body;
import castwell.web.http.route.Route;
import castwell.web.report.ReportFormat;
import castwell.web.report.plan.PlanDesign;
import castwell.web.report.plan.PlanReport;
import castwell.web.report.plan.Wish;
import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
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

  public List<Route> routes() {
    return List.of(
        Route.get("/api/plans", "A station's plans")
            .text("station", "whose; the first one's otherwise")
            .answersAll(PlanView.class, this::ofStation),
        Route.post("/api/plans", "Makes a plan, of turns or of what they come from")
            .takes(PlanRequest.class, LARGEST_BODY)
            .creates(WholePlan.class, (ctx, request) -> make(request)),
        Route.get("/api/plans/{plan}", "A plan with every turn")
            .answers(WholePlan.class, this::plan),
        Route.post("/api/plans/{plan}/events", "Says how a plan goes on")
            .takes(PlanEventRequest.class)
            .answers(PlanView.class, this::say));
  }

  private List<PlanView> ofStation(Context ctx) {
    String asked = ctx.queryParam("station");
    String station =
        RangeApi.known(capture, asked == null ? capture.links().get(0).station() : asked);
    return store.read(
        t -> t.plans().ofStation(station).stream().map(p -> PlanViews.of(t, p)).toList());
  }

  private WholePlan plan(Context ctx) {
    long id = id(ctx);
    return store.read(t -> PlanViews.whole(t, find(t, id), Optional.empty()));
  }

  private WholePlan make(PlanRequest request) {
    String station = RangeApi.known(capture, request.station());
    if (request.turns().isPresent() == request.from().isPresent()) {
      throw Body.invalid("refused.plan_from");
    }
    Optional<PlanDesign> design =
        request
            .from()
            .map(PlansApi::wish)
            .map(wish -> store.read(t -> PlanDesign.of(t, zone, wish)));
    List<Wanted> turns =
        design.map(PlansApi::turns).orElseGet(() -> turns(request.turns().orElseThrow()));
    String name =
        request
            .name()
            .orElseGet(() -> design.map(d -> "Rework of " + d.bows().get(0)).orElse("By hand"));
    long id = plans.make(station, name, turns, "page");
    Optional<List<String>> sentences =
        design.map(d -> store.read(t -> PlanReport.of(t, d, ReportFormat.TRADE).sentences()));
    return store.read(t -> PlanViews.whole(t, find(t, id), sentences));
  }

  private static List<Wanted> turns(List<TurnRequest> turns) {
    return turns.stream().map(turn -> new Wanted(turn.bow(), turn.arrow())).toList();
  }

  private static Wish wish(DesignRequest from) {
    return Wish.of(
        from.bow(),
        from.control(),
        from.changeFps(),
        from.changePercent(),
        from.power(),
        from.sdFps(),
        from.arrow(),
        from.sessions(),
        from.shots(),
        from.seed());
  }

  private static List<Wanted> turns(PlanDesign design) {
    return design.order().stream()
        .map((ShotOrder.Turn turn) -> new Wanted(turn.bow(), turn.arrow()))
        .toList();
  }

  private PlanView say(Context ctx, PlanEventRequest request) {
    long id = id(ctx);
    plans.say(id, word(request.word()), request.turn(), "page");
    return store.read(t -> PlanViews.of(t, find(t, id)));
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
