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
import castwell.web.report.plan.Wish;
import castwell.web.text.Speech;
import java.util.List;
import java.util.OptionalDouble;

/** The page that plans a comparison: how many days and arrows for how small a change. */
public final class PlanPage {
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
      String percent,
      String sd,
      String sessions,
      String shots,
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
    String percent = request.text("percent").orElse("");
    Form form =
        new Form(
            bows,
            request.stations(),
            request.text("bow").orElse(bows.isEmpty() ? "" : bows.get(0)),
            request.texts("control"),
            request.t().rack().arrows().stream().map(Rack.Arrow::name).toList(),
            request.texts("arrow"),
            percent.isEmpty() ? request.text("change").orElseGet(this::usualChange) : "",
            percent,
            request.text("sd").orElse(""),
            request.text("sessions").orElse(""),
            request.text("shots").orElse(""),
            speech.unit(SPEED));
    if (bows.isEmpty() || form.arrows().isEmpty()) {
      return new View(form, request.say("plan.empty"), List.of(), order(List.of()), "");
    }
    try {
      PlanDesign design = PlanDesign.of(request.t(), request.zone(), wish(form));
      return new View(
          form,
          "",
          PlanReport.of(request.t(), design, new ReportFormat(speech)).sentences(),
          order(design.order()),
          from(design.wish(), design));
    } catch (Refused refused) {
      return new View(
          form, request.speech().say(refused.phrase()), List.of(), order(List.of()), "");
    }
  }

  private String usualChange() {
    return speech
        .plain(SPEED, Wish.USUAL_CHANGE_FPS * Units.METRES_PER_FOOT)
        .replace(" " + speech.unit(SPEED), "");
  }

  private Wish wish(Form form) {
    OptionalDouble change =
        form.percent().isEmpty() ? feet(request.quantity("change", SPEED)) : OptionalDouble.empty();
    return Wish.of(
        form.bow(),
        form.controls().stream().filter(name -> !name.equals(form.bow())).toList(),
        change,
        request.number("percent"),
        OptionalDouble.empty(),
        feet(request.quantity("sd", SPEED)),
        form.chosen(),
        request.number("sessions"),
        request.number("shots"),
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
            design.size().mps() / Units.METRES_PER_FOOT,
            InUnits.of(wish.sdMps(), Units.METRES_PER_FOOT),
            wish.arrows(),
            wish.sessions(),
            wish.shots(),
            wish.seed()));
  }
}
