package castwell.web.http;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;

import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.web.report.BowReport;
import castwell.web.report.PlanReport;
import castwell.web.report.RankingReport;
import castwell.web.report.ReachReport;
import castwell.web.report.Report;
import castwell.web.report.ReportRequest;
import castwell.web.report.ReworkReport;
import castwell.web.report.SessionReport;
import castwell.web.report.Yardstick;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** What the speeds say, by the same reports as the command line's. */
final class ReportsApi {
  private final Store store;
  private final ZoneId zone;

  ReportsApi(Store store, ZoneId zone) {
    this.store = store;
    this.zone = zone;
  }

  void route(JavalinConfig config) {
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
    if (!(gpp > 0 && gpp < 100)) {
      throw Body.invalid("\"gpp\" lies above 0 and below 100, not at %s.".formatted(gpp));
    }
    if (!(scaleULb >= 0 && scaleULb < 50)) {
      throw Body.invalid("\"scale_u_lb\" lies between 0 and 50, not at %s.".formatted(scaleULb));
    }
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
    OptionalDouble momentum = number(ctx, "momentum_slug_fps");
    OptionalDouble energy = number(ctx, "energy_ftlbf");
    String bow = ctx.queryParam("like_bow");
    String arrow = ctx.queryParam("like_arrow");
    ReachReport.Wanted wanted;
    if (bow != null && arrow != null && momentum.isEmpty() && energy.isEmpty()) {
      wanted = new ReachReport.Like(bow, arrow, yardstick(ctx));
    } else if (momentum.isPresent() && energy.isEmpty() && bow == null && arrow == null) {
      wanted =
          new ReachReport.Momentum(
              positive(momentum.getAsDouble()) * NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND);
    } else if (energy.isPresent() && momentum.isEmpty() && bow == null && arrow == null) {
      wanted =
          new ReachReport.KineticEnergy(positive(energy.getAsDouble()) * JOULES_PER_FOOT_POUND);
    } else {
      throw Body.invalid(
          "Say what to reach in one way: momentum_slug_fps, energy_ftlbf, or like_bow with like_arrow.");
    }
    answer(ctx, t -> ReachReport.of(t, zone, wanted));
  }

  private static double positive(double value) {
    if (!(value > 0)) {
      throw Body.invalid("What to reach lies above 0, not at %s.".formatted(value));
    }
    return value;
  }

  private static Yardstick yardstick(Context ctx) {
    String asked = ctx.queryParam("yardstick");
    try {
      return asked == null ? Yardstick.momentum : Yardstick.valueOf(asked);
    } catch (IllegalArgumentException e) {
      throw Body.invalid("\"yardstick\" is momentum or energy.");
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
    List<String> bows = new ArrayList<>(List.of(ctx.pathParam("name")));
    bows.addAll(ctx.queryParams("control"));
    OptionalDouble sdFps = number(ctx, "sd_fps");
    PlanReport.Wish wish =
        new PlanReport.Wish(
            bows,
            number(ctx, "change_fps").orElse(2) * METRES_PER_FOOT,
            number(ctx, "power").orElse(0.8),
            sdFps.isPresent()
                ? OptionalDouble.of(sdFps.getAsDouble() * METRES_PER_FOOT)
                : OptionalDouble.empty(),
            ctx.queryParams("arrow"),
            (long) number(ctx, "seed").orElse(1));
    answer(ctx, t -> PlanReport.of(t, zone, wish));
  }

  private void session(Context ctx, Optional<String> name) {
    answer(ctx, t -> SessionReport.of(t, zone, name));
  }

  private static String text(Context ctx, String name) {
    String value = ctx.queryParam(name);
    if (value == null) {
      throw Body.invalid("\"%s\" is missing: say a date or a session.".formatted(name));
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
    throw Body.invalid("\"%s\" is a finite number, not %s.".formatted(name, value));
  }
}
