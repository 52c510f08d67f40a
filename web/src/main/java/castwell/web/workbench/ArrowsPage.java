package castwell.web.workbench;

import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.MASS_FOR_WEIGHT;

import castwell.analysis.bow.FitAdvice;
import castwell.analysis.statistic.Mean;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.unit.Units;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Weighings;
import castwell.capture.store.Weighings.Weighing;
import castwell.web.chart.FigureTable;
import castwell.web.text.Speech;
import castwell.web.workbench.BowPage.Fact;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/** The page of all arrows, with their masses and how heavy each is for every bow. */
public final class ArrowsPage {
  private final PageRequest request;
  private final Speech speech;

  /**
   * @param arrows those in use, the lightest first, then those out of use
   * @param perPound grains per pound of each arrow for every bow, ▲ where it is too light
   */
  public record View(
      List<Card> arrows, FigureTable perPound, boolean hasLight, ArrowFields fields) {}

  /** The form for an arrow, in the person's units. */
  public record ArrowFields(NumberInput mass, MeasureInputs more) {}

  /**
   * @param fields the values as they are now, to be entered anew
   */
  public record Card(
      String name,
      boolean retired,
      List<Fact> facts,
      NumberInput weighing,
      List<Weighed> weighings,
      ArrowFields fields) {}

  /** One weighing. */
  public record Weighed(long id, String told, boolean counts, String why) {}

  private ArrowsPage(PageRequest request) {
    this.request = request;
    this.speech = request.speech();
  }

  public static Page of(PageRequest request) {
    return new Page(
        MenuEntry.ARROWS, "arrows", request.say("arrows.title"), new ArrowsPage(request).view());
  }

  private View view() {
    Set<Long> retired = request.t().retirements().arrows();
    List<Arrow> arrows = new ArrayList<>(request.t().rack().arrows());
    arrows.sort(
        Comparator.comparing((Arrow arrow) -> retired.contains(arrow.id()))
            .thenComparingDouble(Arrow::massKg));
    List<BowState> bows = bows();
    FigureTable perPound =
        perPound(arrows.stream().filter(a -> !retired.contains(a.id())).toList(), bows);
    return new View(
        arrows.stream().map(arrow -> card(arrow, retired.contains(arrow.id()))).toList(),
        perPound,
        perPound.rows().stream().flatMap(List::stream).anyMatch(cell -> cell.startsWith("▲")),
        fields(OptionalDouble.empty(), Measures.none()));
  }

  private List<BowState> bows() {
    Set<Long> retired = request.t().retirements().bows();
    return request.t().rack().bowNames().stream()
        .filter(bow -> !retired.contains(bow.id()))
        .flatMap((Rack.Named bow) -> request.t().rack().state(bow.id(), request.now()).stream())
        .toList();
  }

  private FigureTable perPound(List<Arrow> arrows, List<BowState> bows) {
    List<String> headings = new ArrayList<>(List.of(request.say("arrow")));
    bows.forEach(bow -> headings.add(bow.bow()));
    List<List<String>> rows = new ArrayList<>();
    for (Arrow arrow : arrows) {
      List<String> row = new ArrayList<>(List.of(arrow.name()));
      bows.forEach(bow -> row.add(gpp(arrow, bow)));
      rows.add(row);
    }
    return new FigureTable(headings, rows);
  }

  private String gpp(Arrow arrow, BowState bow) {
    String told = speech.plain(MASS_FOR_WEIGHT, arrow.massKg() / bow.drawWeightN());
    double gpp = Units.grainsPerPound(arrow.massKg(), bow.drawWeightN());
    return gpp < FitAdvice.LEAST_GPP ? "▲ " + told : told;
  }

  private Card card(Arrow arrow, boolean retired) {
    List<Fact> facts = new ArrayList<>();
    List<Weighing> weighings = request.t().weighings().of(arrow.id());
    facts.add(new Fact(request.say("arrows.mass"), mass(arrow, weighings)));
    facts.addAll(
        MeasureFacts.of(
            speech, ArrowMeasure.values(), arrow.measures(), measure -> measure.usual().isEmpty()));
    return new Card(
        arrow.name(),
        retired,
        facts,
        NumberInput.of(speech, "mass_gr", "arrows.weighed", ARROW_MASS, OptionalDouble.empty()),
        weighings.stream().map(this::weighed).toList(),
        fields(OptionalDouble.of(arrow.massKg()), arrow.measures()));
  }

  private String mass(Arrow arrow, List<Weighing> weighings) {
    double[] massesKg = Weighings.massesKg(weighings);
    if (massesKg.length < 2) {
      return speech.measured(ARROW_MASS, arrow.massKg());
    }
    double sd = StandardDeviation.of(massesKg);
    return request.say(
        "arrows.weighings",
        speech.figure(ARROW_MASS, Mean.of(massesKg), sd / Math.sqrt(massesKg.length)),
        speech.figure(ARROW_MASS, sd, sd / Math.sqrt(2.0 * (massesKg.length - 1))),
        massesKg.length);
  }

  private Weighed weighed(Weighing weighing) {
    return new Weighed(
        weighing.id(),
        request.say(
            "arrows.weighing",
            speech.measured(ARROW_MASS, weighing.massKg()),
            Days.withMinute(weighing.atMs(), request.zone())),
        weighing.counts(),
        weighing.why());
  }

  private ArrowFields fields(OptionalDouble mass, Measures<ArrowMeasure> measures) {
    return new ArrowFields(
        NumberInput.of(speech, "mass_gr", "arrows.mass", ARROW_MASS, mass),
        MeasureInputs.of(speech, ArrowMeasure.values(), measures));
  }
}
