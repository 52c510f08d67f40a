package castwell.web.http.api;

import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.web.report.Report;
import castwell.web.report.ReportRequest;
import castwell.web.report.bow.BowReport;
import castwell.web.report.plan.PlanReport;
import castwell.web.report.ranking.RankingReport;
import castwell.web.report.reach.ReachReport;
import castwell.web.report.reach.Yardstick;
import castwell.web.report.rework.ReworkReport;
import castwell.web.report.session.SessionReport;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.ZoneId;
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

  public void route(JavalinConfig config) {
    config.routes.get("/api/reports/bow/{name}", this::bow);
    config.routes.get("/api/reports/ranking", this::ranking);
    config.routes.get("/api/reports/reach", this::reach);
    config.routes.get("/api/reports/rework/{name}", this::rework);
    config.routes.get("/api/reports/plan/{name}", this::plan);
    config.routes.get("/api/reports/session", ctx -> session(ctx, Optional.empty()));
    config.routes.get(
        "/api/reports/session/{name}", ctx -> session(ctx, Optional.of(ctx.pathParam("name"))));
  }

  private void answer(Context ctx, Function<Transaction, Report> report) {
    ctx.json(store.read(report).data());
  }

  private static ReportRequest request(Context ctx) {
    double gpp = number(ctx, "gpp").orElse(ReportRequest.USUAL_GPP);
    double scaleULb = number(ctx, "scale_u_lb").orElse(ReportRequest.USUAL_SCALE_U_LB);
    return ReportRequest.of(gpp, scaleULb);
  }

  private void bow(Context ctx) {
    ReportRequest request = request(ctx);
    Optional<String> state = Optional.ofNullable(ctx.queryParam("state"));
    answer(ctx, t -> BowReport.of(t, zone, ctx.pathParam("name"), state, request));
  }

  private void ranking(Context ctx) {
    ReportRequest request = request(ctx);
    answer(ctx, t -> RankingReport.of(t, zone, request));
  }

  private void reach(Context ctx) {
    ReachReport.Wanted wanted =
        ReachReport.Wanted.of(
            boxed(number(ctx, "momentum_slug_fps")),
            boxed(number(ctx, "energy_ftlbf")),
            Optional.ofNullable(ctx.queryParam("like_bow")),
            Optional.ofNullable(ctx.queryParam("like_arrow")),
            yardstick(ctx));
    answer(ctx, t -> ReachReport.of(t, zone, wanted));
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

  private void rework(Context ctx) {
    ReportRequest request = request(ctx);
    ReworkReport.Question question =
        new ReworkReport.Question(
            ctx.pathParam("name"),
            text(ctx, "before"),
            text(ctx, "after"),
            ctx.queryParams("control"));
    answer(ctx, t -> ReworkReport.of(t, zone, question, request));
  }

  private void plan(Context ctx) {
    PlanReport.Wish wish =
        PlanReport.Wish.of(
            ctx.pathParam("name"),
            ctx.queryParams("control"),
            number(ctx, "change_fps"),
            number(ctx, "power"),
            number(ctx, "sd_fps"),
            ctx.queryParams("arrow"),
            number(ctx, "seed"));
    answer(ctx, t -> PlanReport.of(t, zone, wish));
  }

  private void session(Context ctx, Optional<String> name) {
    answer(ctx, t -> SessionReport.of(t, zone, name));
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
