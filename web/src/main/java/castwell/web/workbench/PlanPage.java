package castwell.web.workbench;

import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.compare.ShotOrder.Turn;
import castwell.analysis.unit.Units;
import castwell.capture.command.Refused;
import castwell.capture.store.Rack;
import castwell.capture.view.InUnits;
import castwell.capture.view.Json;
import castwell.capture.view.plan.DesignAgain;
import castwell.web.chart.FigureTable;
import castwell.web.report.ReportFormat;
import castwell.web.report.plan.PlanDesign;
import castwell.web.report.plan.PlanReport;
import castwell.web.report.plan.PlanReport.Wish;
import castwell.web.text.Speech;
import java.util.List;
import java.util.OptionalDouble;

/** The page that plans a comparison: how many arrows for how small a change, and in which order. */
public final class PlanPage {
  private static final double USUAL_CHANGE_FPS = 2;

  private final PageRequest request;
  private final Speech speech;

  /**
   * @param refused why there is no answer, "" if there is one
   * @param from the same question for the API, "" without an answer
   */
  public record View(
      Form form, String refused, List<String> answer, FigureTable order, String from) {}

  /** What can be filled in, and what was. */
  public record Form(
      List<String> bows,
      List<String> stations,
      String bow,
      List<String> controls,
      List<String> arrows,
      List<String> chosen,
      String change,
      String sd,
      String unit) {}

  private PlanPage(PageRequest request) {
    this.request = request;
    this.speech = request.speech();
  }

  public static Page of(PageRequest request) {
    return new Page(
        MenuEntry.PLAN, "plan", request.say("plan.title"), new PlanPage(request).view());
  }

  private View view() {
    List<String> bows = request.t().rack().bowNames().stream().map(Rack.Named::name).toList();
    Form form =
        new Form(
            bows,
            request.stations(),
            request.text("bow").orElse(bows.isEmpty() ? "" : bows.get(0)),
            request.texts("control"),
            request.t().rack().arrows().stream().map(Rack.Arrow::name).toList(),
            request.texts("arrow"),
            request.text("change").orElseGet(this::usualChange),
            request.text("sd").orElse(""),
            speech.unit(SPEED));
    if (bows.isEmpty() || form.arrows().isEmpty()) {
      return new View(form, request.say("plan.empty"), List.of(), order(List.of()), "");
    }
    try {
      PlanDesign design = PlanDesign.of(request.t(), request.zone(), wish(form));
      return new View(
          form,
          "",
          PlanReport.of(design, new ReportFormat(speech)).sentences(),
          order(design.order()),
          from(design.wish(), design));
    } catch (Refused refused) {
      return new View(
          form, request.speech().say(refused.phrase()), List.of(), order(List.of()), "");
    }
  }

  private String usualChange() {
    return speech
        .plain(SPEED, USUAL_CHANGE_FPS * Units.METRES_PER_FOOT)
        .replace(" " + speech.unit(SPEED), "");
  }

  private Wish wish(Form form) {
    OptionalDouble change =
        request.text("change").isPresent()
            ? feet(request.quantity("change", SPEED))
            : OptionalDouble.empty();
    return Wish.of(
        form.bow(),
        form.controls().stream().filter(name -> !name.equals(form.bow())).toList(),
        change,
        OptionalDouble.empty(),
        feet(request.quantity("sd", SPEED)),
        form.chosen(),
        request.number("seed"));
  }

  private static OptionalDouble feet(OptionalDouble mps) {
    return mps.isPresent() ? OptionalDouble.of(mps.getAsDouble() / Units.METRES_PER_FOOT) : mps;
  }

  private FigureTable order(List<Turn> turns) {
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("plan.turn"),
            request.say("plan.block"),
            request.say("bow"),
            request.say("arrow"));
    for (int i = 0; i < turns.size(); i++) {
      Turn turn = turns.get(i);
      rows.add(String.valueOf(i + 1), String.valueOf(turn.block()), turn.bow(), turn.arrow());
    }
    return rows.table();
  }

  private static String from(Wish wish, PlanDesign design) {
    return Json.text(
        new DesignAgain(
            design.bows().get(0),
            design.bows().subList(1, design.bows().size()),
            wish.changeMps() / Units.METRES_PER_FOOT,
            InUnits.of(wish.sdMps(), Units.METRES_PER_FOOT),
            wish.arrows(),
            wish.seed()));
  }
}
