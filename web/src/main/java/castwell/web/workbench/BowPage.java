package castwell.web.workbench;

import static castwell.web.unit.Dimension.DRAW_LENGTH;
import static castwell.web.unit.Dimension.ENERGY;
import static castwell.web.unit.Dimension.FORCE;
import static castwell.web.unit.Dimension.MOMENTUM;
import static castwell.web.unit.Dimension.SHARE;

import castwell.analysis.bow.FitAdvice;
import castwell.analysis.cell.CellSums;
import castwell.analysis.unit.Units;
import castwell.capture.measure.BowMeasure;
import castwell.capture.store.Rack.BowState;
import castwell.capture.view.StateName;
import castwell.web.chart.Chart;
import castwell.web.report.AnyDay;
import castwell.web.report.BowCells;
import castwell.web.report.DayWords;
import castwell.web.report.GatesWords;
import castwell.web.report.ReportFormat;
import castwell.web.report.SpeedNote;
import castwell.web.report.bow.AdviceWords;
import castwell.web.report.bow.AnyDayRows;
import castwell.web.report.bow.BowStudy;
import castwell.web.text.Speech;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The page of one bow: its life, what it does to arrows, and why. */
public final class BowPage {
  private final PageRequest request;
  private final Speech speech;
  private final BowStudy study;

  /**
   * @param life its states, the newest first
   * @param advice what to shoot next
   */
  public record View(
      String name,
      List<String> answer,
      List<String> cautions,
      List<Fact> facts,
      List<Chart> charts,
      List<String> advice,
      List<Stage> life,
      BowFields fields,
      Reference reference) {}

  /** The values wanted of an arrow, as they were filled in; the charts show them. */
  public record Reference(String momentum, String momentumUnit, String energy, String energyUnit) {}

  public record Fact(String name, String value) {}

  /**
   * A bow's state, from one thing that was done to it to the next.
   *
   * @param told its name as it is read
   * @param isShown whether the page's figures are of this state
   */
  public record Stage(
      String name, String told, String done, List<Fact> measures, boolean isShown) {}

  private BowPage(PageRequest request) {
    this.request = request;
    this.speech = request.speech();
    this.study =
        BowStudy.of(
            request.t(),
            request.zone(),
            request.named("name"),
            request.text("state"),
            request.request());
  }

  public static Page of(PageRequest request) {
    BowPage page = new BowPage(request);
    return new Page(MenuEntry.RACK, "bow", page.study.state().bow(), page.view());
  }

  /** The chart of speed over arrow mass alone, for the range page. */
  public static Page speed(PageRequest request) {
    BowPage page = new BowPage(request);
    return new Page(
        MenuEntry.RANGE,
        "speed",
        page.study.state().bow(),
        new BowCharts(request, page.study).speed());
  }

  private View view() {
    BowCharts charts = new BowCharts(request, study);
    return new View(
        study.state().bow(),
        answer(),
        cautions(),
        facts(),
        List.of(
            charts.speed(),
            charts.region(),
            charts.momentum(request.quantity("momentum", MOMENTUM)),
            charts.energy(request.quantity("energy", ENERGY)),
            charts.share(),
            charts.forceDraw()),
        study.cells().shots() == 0
            ? List.of()
            : AdviceWords.of(study.advice(), new ReportFormat(speech)),
        life(),
        BowFields.of(speech, request.zone(), request.now(), Optional.of(study.state())),
        new Reference(
            request.text("momentum").orElse(""),
            speech.unit(MOMENTUM),
            request.text("energy").orElse(""),
            speech.unit(ENERGY)));
  }

  private List<String> answer() {
    String name = study.state().bow();
    if (study.cells().shots() == 0) {
      return List.of(speech.say("bow.no_shots", name));
    }
    ReportFormat format = new ReportFormat(speech);
    AnyDay bow = study.anyDay().orElseThrow();
    List<String> answer =
        new ArrayList<>(CastWords.of(speech, name, bow, study.cast().orElseThrow()));
    answer.add(AnyDayRows.sentence(bow, format));
    answer.addAll(DayWords.of(bow.season(), format));
    return SpeedNote.ofBows(Stream.of(study.cells())).in(answer, request.t(), format);
  }

  private List<String> cautions() {
    List<CellSums> cells = study.cells().cells();
    List<String> sessions = new BowCells(request.t(), request.zone()).lastSessions(study.state());
    return Stream.concat(
            lightArrows(cells),
            GatesWords.of(request.t(), sessions, new ReportFormat(speech)).stream())
        .toList();
  }

  private Stream<String> lightArrows(List<CellSums> cells) {
    return cells.stream()
        .filter(cell -> gppOf(cell) < FitAdvice.LEAST_GPP)
        .map(cell -> cell.name().arrow())
        .distinct()
        .map(arrow -> speech.say("bow.light_arrow", arrow));
  }

  private double gppOf(CellSums cell) {
    return Units.grainsPerPound(cell.massKg(), study.state().drawWeightN());
  }

  private List<Fact> facts() {
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact(speech.say("rack.draw"), draw(study.state())));
    facts.add(
        new Fact(
            speech.say("shots"),
            speech.say(
                "rack.shots_since", study.cells().shots(), Days.ofState(study.stateName()))));
    study
        .forceDraw()
        .ifPresent(
            curve -> {
              facts.add(
                  new Fact(
                      speech.say("bow.stored_energy"),
                      speech.plain(ENERGY, curve.storedEnergyJ())));
              facts.add(
                  new Fact(
                      speech.say("bow.stack"),
                      curve.stacksAtM().isPresent()
                          ? speech.say(
                              "bow.stacks_from", speech.plain(DRAW_LENGTH, curve.stacksAtM()))
                          : speech.say("bow.no_stack")));
              facts.add(
                  new Fact(speech.say("bow.hysteresis"), speech.plain(SHARE, curve.hysteresis())));
            });
    return facts;
  }

  private String draw(BowState state) {
    return speech.say(
        "bow.draw",
        speech.plain(FORCE, state.drawWeightN()),
        speech.plain(DRAW_LENGTH, state.drawLengthM()));
  }

  private List<Stage> life() {
    List<Stage> life = new ArrayList<>(study.states().stream().map(this::stage).toList());
    Collections.reverse(life);
    return life;
  }

  private Stage stage(BowState state) {
    String name = StateName.of(state.since(), request.zone());
    return new Stage(
        name,
        Days.ofState(name),
        state.done().isEmpty() ? speech.say("bow.entered") : state.done(),
        Stream.concat(
                Stream.of(new Fact(speech.say("rack.draw"), draw(state))),
                measures(speech, state).stream())
            .toList(),
        name.equals(study.stateName()));
  }

  /** The measures that were taken. */
  static List<Fact> measures(Speech speech, BowState state) {
    return MeasureFacts.of(speech, BowMeasure.values(), state.measures(), measure -> false);
  }
}
