package castwell.web.http.api;

import castwell.analysis.unit.Units;
import castwell.capture.intake.Brought;
import castwell.capture.intake.HandUncertainty;
import castwell.capture.intake.IntakeCommands;
import castwell.capture.intake.Look;
import castwell.capture.intake.Taken;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.intake.sheet.SheetRefused;
import castwell.web.http.problem.Problems;
import castwell.web.text.Speech;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Sheets that somebody brings: taken in whole, or each bad line named. */
public final class ImportApi {
  private static final int LARGEST_BODY = 8 * 1024 * 1024;
  private static final int MOST_LINES = 1000;

  private final IntakeCommands intake;

  public ImportApi(IntakeCommands intake) {
    this.intake = intake;
  }

  public void route(JavalinConfig config) {
    config.routes.post("/api/import", this::take);
    config.routes.post("/api/import/preview", this::preview);
    config.routes.exception(SheetRefused.class, ImportApi::refuse);
  }

  private void take(Context ctx) {
    Taken taken = intake.take(brought(ctx), part -> {});
    ctx.status(HttpStatus.CREATED);
    ctx.json(view(taken));
  }

  private static Brought brought(Context ctx) {
    Body body =
        Body.of(ctx, LARGEST_BODY, "what", "csv", "map", "source", "own_fps", "common_percent");
    return new Brought(
        what(body.text("what")),
        body.optionalText("source").orElseGet(() -> Speech.TRADE.say("sheet.itself")),
        body.text("csv"),
        body.texts("map"),
        uncertainty(body),
        "page");
  }

  private static Map<String, Object> view(Taken taken) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("taken", taken.taken());
    view.put("set_aside", taken.setAside());
    view.put("already", taken.already());
    view.put("not_read", taken.notRead());
    return view;
  }

  /** SheetKind stands in it, how it would be read, and what would become of it; nothing is kept. */
  private void preview(Context ctx) {
    Brought brought = brought(ctx);
    Look look = Look.at(brought);
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("headings", look.headings());
    view.put("meant", look.meant());
    view.put("columns", look.columns());
    view.put("rows", look.rows());
    try {
      view.put("would", view(intake.tryOut(brought)));
    } catch (SheetRefused refused) {
      view.put("refused", Speech.TRADE.say(refused.phrase()));
      view.put("lines", lines(refused));
    }
    ctx.json(view);
  }

  private static SheetKind what(String word) {
    return Arrays.stream(SheetKind.values())
        .filter(what -> what.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                Body.invalid(
                    "refused.field_what",
                    Arrays.stream(SheetKind.values())
                        .map(SheetKind::word)
                        .collect(Collectors.joining(", "))));
  }

  private static HandUncertainty uncertainty(Body body) {
    HandUncertainty usual = HandUncertainty.USUAL;
    try {
      return new HandUncertainty(
          body.optionalNumber("own_fps").orElse(usual.ownMps() / Units.METRES_PER_FOOT)
              * Units.METRES_PER_FOOT,
          body.optionalNumber("common_percent").orElse(100 * usual.commonShare()) / 100);
    } catch (IllegalArgumentException e) {
      throw Body.invalid("refused.own_fps", e.getMessage());
    }
  }

  private static void refuse(SheetRefused refused, Context ctx) {
    Map<String, Object> problem =
        Problems.problem(HttpStatus.BAD_REQUEST, Speech.TRADE.say(refused.phrase()));
    problem.put("lines", lines(refused));
    Problems.answer(ctx, HttpStatus.BAD_REQUEST, problem);
  }

  private static List<Map<String, Object>> lines(SheetRefused refused) {
    return refused.lines().stream()
        .limit(MOST_LINES)
        .map(
            bad ->
                Map.<String, Object>of(
                    "line", bad.line(), "reason", Speech.TRADE.say(bad.reason())))
        .toList();
  }
}
