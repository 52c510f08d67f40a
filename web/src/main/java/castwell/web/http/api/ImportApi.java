package castwell.web.http.api;

import castwell.analysis.unit.Units;
import castwell.capture.intake.Brought;
import castwell.capture.intake.HandUncertainty;
import castwell.capture.intake.IntakeCommands;
import castwell.capture.intake.Look;
import castwell.capture.intake.Taken;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.intake.sheet.SheetRefused;
import castwell.capture.view.data.BadLine;
import castwell.capture.view.data.ImportRequest;
import castwell.capture.view.data.LookView;
import castwell.capture.view.data.Problem;
import castwell.capture.view.data.TakenView;
import castwell.web.http.problem.Problems;
import castwell.web.http.route.Body;
import castwell.web.http.route.Route;
import castwell.web.text.Speech;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Sheets that somebody brings: taken in whole, or each bad line named. */
public final class ImportApi {
  private static final int LARGEST_BODY = 8 * 1024 * 1024;
  private static final int MOST_LINES = 1000;

  private final IntakeCommands intake;

  public ImportApi(IntakeCommands intake) {
    this.intake = intake;
  }

  public List<Route> routes() {
    return List.of(
        Route.post("/api/import", "Takes in a sheet: all of it, or nothing")
            .takes(ImportRequest.class, LARGEST_BODY)
            .creates(
                TakenView.class, (ctx, sheet) -> view(intake.take(brought(sheet), part -> {}))),
        Route.post("/api/import/preview", "Looks at a sheet, and keeps nothing of it")
            .takes(ImportRequest.class, LARGEST_BODY)
            .answers(LookView.class, (ctx, sheet) -> preview(brought(sheet))));
  }

  public static void refuse(JavalinConfig config) {
    config.routes.exception(SheetRefused.class, ImportApi::refuse);
  }

  private static Brought brought(ImportRequest sheet) {
    return new Brought(
        what(sheet.what()),
        sheet.source().orElseGet(() -> Speech.TRADE.say("sheet.itself")),
        sheet.csv(),
        sheet.map(),
        uncertainty(sheet),
        "page");
  }

  private static TakenView view(Taken taken) {
    return new TakenView(taken.taken(), taken.setAside(), taken.already(), taken.notRead());
  }

  /** SheetKind stands in it, how it would be read, and what would become of it; nothing is kept. */
  private LookView preview(Brought brought) {
    Look look = Look.at(brought);
    try {
      TakenView would = view(intake.tryOut(brought));
      return look(look, Optional.of(would), Optional.empty(), Optional.empty());
    } catch (SheetRefused refused) {
      return look(
          look,
          Optional.empty(),
          Optional.of(Speech.TRADE.say(refused.phrase())),
          Optional.of(lines(refused)));
    }
  }

  private static LookView look(
      Look look,
      Optional<TakenView> would,
      Optional<String> refused,
      Optional<List<BadLine>> lines) {
    return new LookView(
        look.headings(), look.meant(), look.columns(), look.rows(), would, refused, lines);
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

  private static HandUncertainty uncertainty(ImportRequest sheet) {
    HandUncertainty usual = HandUncertainty.USUAL;
    try {
      return new HandUncertainty(
          sheet.ownFps().orElse(usual.ownMps() / Units.METRES_PER_FOOT) * Units.METRES_PER_FOOT,
          sheet.commonPercent().orElse(100 * usual.commonShare()) / 100);
    } catch (IllegalArgumentException e) {
      throw Body.invalid("refused.own_fps", e.getMessage());
    }
  }

  private static void refuse(SheetRefused refused, Context ctx) {
    String sentence = Speech.TRADE.say(refused.phrase());
    Problem problem = Problems.problem(HttpStatus.BAD_REQUEST, sentence);
    Problems.answer(ctx, HttpStatus.BAD_REQUEST, problem.with(lines(refused)));
  }

  private static List<BadLine> lines(SheetRefused refused) {
    return refused.lines().stream()
        .limit(MOST_LINES)
        .map(bad -> new BadLine(bad.line(), Speech.TRADE.say(bad.reason())))
        .toList();
  }
}
