package castwell.web.http.api;

import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.bow.BowReportView;
import castwell.capture.view.report.plan.PlanReportView;
import castwell.capture.view.report.ranking.RankingReportView;
import castwell.capture.view.report.reach.ReachReportView;
import castwell.capture.view.report.rework.ReworkReportView;
import castwell.capture.view.report.session.SessionReportView;
import castwell.web.http.route.Asking;
import castwell.web.http.route.Body;
import castwell.web.http.route.Route;
import castwell.web.report.Report;
import castwell.web.report.ReportRequest;
import castwell.web.report.bow.BowReport;
import castwell.web.report.plan.PlanReport;
import castwell.web.report.plan.Wish;
import castwell.web.report.ranking.RankingReport;
import castwell.web.report.reach.ReachReport;
import castwell.web.report.reach.Yardstick;
import castwell.web.report.rework.ReworkReport;
import castwell.web.report.session.SessionReport;
import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** What the speeds say, by the same reports as the command line's. */
public final class ReportsApi {
  private final Store store;
  private final ZoneId zone;

  public ReportsApi(Store store, ZoneId zone) {
    this.store = store;
    this.zone = zone;
  }

  public List<Route> routes() {
    return List.of(
        cast("/api/reports/bow/{name}", "What a bow does to arrows, and why")
            .text("state", "the date of its state; the one that it is in otherwise")
            .answers(BowReportView.class, this::bow),
        cast("/api/reports/ranking", "The rack by cast")
            .answers(RankingReportView.class, this::ranking),
        Route.get("/api/reports/reach", "The least arrow for every bow that carries what is wanted")
            .number("momentum_slug_fps", "what an arrow is to carry, in slug foot per second")
            .number("energy_ftlbf", "or its energy, in foot pound-force")
            .text("like_bow", "or what this bow gives")
            .text("like_arrow", "this arrow")
            .text("yardstick", "momentum or energy, where it is what a bow gives an arrow")
            .answers(ReachReportView.class, this::reach),
        cast("/api/reports/rework/{name}", "Whether a rework helped")
            .text("before", "a state of the bow, a session or a date; needed")
            .text("after", "likewise")
            .texts("control", "the only other bows to count; all that help where there are none")
            .answers(ReworkReportView.class, this::rework),
        Route.get(
                "/api/reports/plan/{name}",
                "How many sessions and shots see a change, in which order")
            .texts("control", "bows to which nothing is done")
            .number("change_fps", "that should be seen, in foot per second")
            .number("change_percent", "or that, of the speed")
            .number("power", "how surely, between 0.05 and 1")
            .number("sd_fps", "one shot's scatter, in foot per second")
            .texts("arrow", "which; chosen where there are none")
            .number("sessions", "before and as many after, whose chance is asked for")
            .number("shots", "of each arrow from each bow in a session, likewise")
            .number("seed", "of the order")
            .answers(PlanReportView.class, this::plan),
        Route.get("/api/reports/session", "The last outing")
            .answers(SessionReportView.class, ctx -> session(Optional.empty())),
        Route.get("/api/reports/session/{name}", "One outing")
            .answers(SessionReportView.class, ctx -> session(Optional.of(ctx.pathParam("name")))));
  }

  /** One that compares casts. */
  private static Asking cast(String path, String summary) {
    return Route.get(path, summary)
        .number("gpp", "grains per pound at which casts are compared")
        .number("scale_u_lb", "standard uncertainty of a draw weight, in pound-force");
  }

  private <D> D answer(Function<Transaction, Report<D>> report) {
    return store.read(report::apply).data();
  }

  private static ReportRequest request(Context ctx) {
    double gpp = number(ctx, "gpp").orElse(ReportRequest.USUAL_GPP);
    double scaleULb = number(ctx, "scale_u_lb").orElse(ReportRequest.USUAL_SCALE_U_LB);
    return ReportRequest.of(gpp, scaleULb);
  }

  private BowReportView bow(Context ctx) {
    ReportRequest request = request(ctx);
    Optional<String> state = Optional.ofNullable(ctx.queryParam("state"));
    return answer(t -> BowReport.of(t, zone, ctx.pathParam("name"), state, request));
  }

  private RankingReportView ranking(Context ctx) {
    ReportRequest request = request(ctx);
    return answer(t -> RankingReport.of(t, zone, request));
  }

  private ReachReportView reach(Context ctx) {
    ReachReport.Wanted wanted =
        ReachReport.Wanted.of(
            boxed(number(ctx, "momentum_slug_fps")),
            boxed(number(ctx, "energy_ftlbf")),
            Optional.ofNullable(ctx.queryParam("like_bow")),
            Optional.ofNullable(ctx.queryParam("like_arrow")),
            yardstick(ctx));
    return answer(t -> ReachReport.of(t, zone, wanted));
  }

  private static Optional<Double> boxed(OptionalDouble value) {
    return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
  }

  private static Yardstick yardstick(Context ctx) {
    String asked = ctx.queryParam("yardstick");
    try {
      return asked == null ? Yardstick.momentum : Yardstick.valueOf(asked);
    } catch (IllegalArgumentException e) {
      throw Body.invalid("refused.yardstick");
    }
  }

  private ReworkReportView rework(Context ctx) {
    ReportRequest request = request(ctx);
    ReworkReport.Question question =
        new ReworkReport.Question(
            ctx.pathParam("name"),
            text(ctx, "before"),
            text(ctx, "after"),
            ctx.queryParams("control"));
    return answer(t -> ReworkReport.of(t, zone, question, request));
  }

  private PlanReportView plan(Context ctx) {
    Wish wish =
        Wish.of(
            ctx.pathParam("name"),
            ctx.queryParams("control"),
            number(ctx, "change_fps"),
            number(ctx, "change_percent"),
            number(ctx, "power"),
            number(ctx, "sd_fps"),
            ctx.queryParams("arrow"),
            number(ctx, "sessions"),
            number(ctx, "shots"),
            number(ctx, "seed"));
    return answer(t -> PlanReport.of(t, zone, wish));
  }

  private SessionReportView session(Optional<String> name) {
    return answer(t -> SessionReport.of(t, zone, name));
  }

  private static String text(Context ctx, String name) {
    String value = ctx.queryParam(name);
    if (value == null) {
      throw Body.invalid("refused.no_day", name);
    }
    return value;
  }

  private static OptionalDouble number(Context ctx, String name) {
    String value = ctx.queryParam(name);
    if (value == null) {
      return OptionalDouble.empty();
    }
    try {
      double number = Double.parseDouble(value);
      if (Double.isFinite(number)) {
        return OptionalDouble.of(number);
      }
    } catch (NumberFormatException e) {
      // said below
    }
    throw Body.invalid("refused.finite", name, value);
  }
}
