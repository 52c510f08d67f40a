package castwell.web.workbench;

import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.DRAW_LENGTH;
import static castwell.web.unit.Dimension.ENERGY;
import static castwell.web.unit.Dimension.FORCE;
import static castwell.web.unit.Dimension.MASS_FOR_WEIGHT;
import static castwell.web.unit.Dimension.MOMENTUM;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.bow.FitAdvice;
import castwell.analysis.season.StateCurve;
import castwell.analysis.unit.Units;
import castwell.capture.store.Rack.Arrow;
import castwell.web.chart.Chart;
import castwell.web.chart.FigureTable;
import castwell.web.report.bow.BowStudy;
import castwell.web.text.Speech;
import castwell.web.workbench.BowPage.Fact;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** One bow on one printed page, to hang with the bow or to hand to its buyer. */
public final class CardPage {
  private static final int MOST_ARROWS = 8;

  private final PageRequest request;
  private final Speech speech;
  private final BowStudy study;

  /**
   * @param cast the cast with its uncertainty
   * @param arrows those that suit it, by what was shot or by the curve
   */
  public record View(
      String name,
      String state,
      String cast,
      List<Fact> measures,
      FigureTable arrows,
      Chart chart,
      String date) {}

  private CardPage(PageRequest request) {
    this.request = request;
    this.speech = request.speech();
    this.study =
        BowStudy.of(
            request.t(),
            request.zone(),
            request.named("name"),
            Optional.empty(),
            request.request());
  }

  public static Page of(PageRequest request) {
    CardPage card = new CardPage(request);
    return new Page(MenuEntry.RACK, "card", card.study.state().bow(), card.view());
  }

  private View view() {
    return new View(
        study.state().bow(),
        Days.ofState(study.stateName()),
        cast(),
        measures(),
        arrows(),
        new BowCharts(request, study).speed(),
        Days.of(request.now(), request.zone()));
  }

  private String cast() {
    return study
        .cast()
        .map(
            cast ->
                speech.say(
                    "card.cast",
                    speech.plusMinus(SPEED, cast.anyDayMps()),
                    speech.plain(ARROW_MASS, cast.massKg()),
                    speech.plain(
                        MASS_FOR_WEIGHT, cast.gpp() * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP),
                    study.cells().shots(),
                    study.anyDay().orElseThrow().sessions()))
        .orElseGet(() -> speech.say("card.no_cast"));
  }

  private List<Fact> measures() {
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(
            speech.say("rack.draw"),
            speech.say(
                "bow.draw",
                speech.plain(FORCE, study.state().drawWeightN()),
                speech.plain(DRAW_LENGTH, study.state().drawLengthM()))));
    facts.addAll(BowPage.measures(speech, study.state()));
    study
        .forceDraw()
        .ifPresent(
            curve ->
                facts.add(
                    new Fact(
                        speech.say("bow.stored_energy"),
                        speech.plain(ENERGY, curve.storedEnergyJ()))));
    return facts;
  }

  /** Arrows of the rack that were shot from the bow and aren't too light for a wooden one. */
  private FigureTable arrows() {
    FigureTable.Rows rows =
        new FigureTable.Rows(
            speech.say("arrow"),
            speech.say("card.mass"),
            speech.say("card.per_pound"),
            speech.say("card.speed"),
            speech.say("card.energy"),
            speech.say("card.momentum"));
    double[] shot = study.cells().massesKg();
    study
        .anyDay()
        .ifPresent(
            bow ->
                request.t().rack().arrows().stream()
                    .filter(arrow -> suits(arrow) && isAmong(shot, arrow.massKg()))
                    .limit(MOST_ARROWS)
                    .forEach(arrow -> row(rows, bow.curve(), arrow)));
    return rows.table();
  }

  private boolean suits(Arrow arrow) {
    return Units.grainsPerPound(arrow.massKg(), study.state().drawWeightN()) >= FitAdvice.LEAST_GPP;
  }

  private static boolean isAmong(double[] shot, double massKg) {
    return Arrays.stream(shot).min().orElse(Double.NaN) <= massKg
        && massKg <= Arrays.stream(shot).max().orElse(Double.NaN);
  }

  private void row(FigureTable.Rows rows, StateCurve bow, Arrow arrow) {
    double massKg = arrow.massKg();
    rows.add(
        arrow.name(),
        speech.plain(ARROW_MASS, massKg),
        speech.plain(MASS_FOR_WEIGHT, massKg / study.state().drawWeightN()),
        speech.plusMinus(SPEED, bow.speedMps(massKg, RackPage.COVERAGE)),
        speech.plusMinus(ENERGY, bow.kineticEnergyJ(massKg, RackPage.COVERAGE)),
        speech.plusMinus(MOMENTUM, bow.momentumNs(massKg, RackPage.COVERAGE)));
  }
}
