package castwell.web.workbench;

import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.ENERGY;
import static castwell.web.unit.Dimension.MASS_FOR_WEIGHT;
import static castwell.web.unit.Dimension.MOMENTUM;

import castwell.analysis.bow.Target;
import castwell.analysis.season.StateCurve;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.unit.Units;
import castwell.capture.command.Refused;
import castwell.capture.store.Rack;
import castwell.web.chart.Axis;
import castwell.web.chart.Chart;
import castwell.web.chart.FigureTable;
import castwell.web.chart.Mark;
import castwell.web.chart.Style;
import castwell.web.report.ReportFormat;
import castwell.web.report.reach.ReachReport.Wanted;
import castwell.web.report.reach.Reached;
import castwell.web.report.reach.Yardstick;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The page that finds arrows for each bow which carry at least what has served before. */
public final class ReachPage {
  private static final double HEAVIEST_KG = 0.065;

  private final PageRequest request;
  private final Speech speech;

  /**
   * @param refused why there is no answer, "" if there is one
   */
  public record View(Form form, String refused, List<String> answer, List<Chart> charts) {}

  /** What can be filled in, and what was. */
  public record Form(
      List<String> bows,
      List<String> arrows,
      String bow,
      String arrow,
      String yardstick,
      String momentum,
      String momentumUnit,
      String energy,
      String energyUnit) {}

  private ReachPage(PageRequest request) {
    this.request = request;
    this.speech = request.speech();
  }

  public static Page of(PageRequest request) {
    return new Page(
        MenuEntry.REACH, "reach", request.say("reach.title"), new ReachPage(request).view());
  }

  private View view() {
    Form form =
        new Form(
            request.t().rack().bowNames().stream().map(Rack.Named::name).toList(),
            request.t().rack().arrows().stream().map(Rack.Arrow::name).toList(),
            request.text("like_bow").orElse(""),
            request.text("like_arrow").orElse(""),
            yardstick().name(),
            request.text("momentum").orElse(""),
            speech.unit(MOMENTUM),
            request.text("energy").orElse(""),
            speech.unit(ENERGY));
    try {
      Optional<Wanted> wanted = wanted();
      if (wanted.isEmpty()) {
        return new View(form, request.say("reach.ask"), List.of(), List.of());
      }
      Reached reached = Reached.of(request.t(), request.zone(), wanted.get());
      return new View(
          form,
          "",
          reached.sentences(request.t(), new ReportFormat(speech)),
          List.of(least(reached), curves(reached)));
    } catch (Refused refused) {
      return new View(form, request.speech().say(refused.phrase()), List.of(), List.of());
    }
  }

  private Yardstick yardstick() {
    return request.text("yardstick").filter("energy"::equals).isPresent()
        ? Yardstick.energy
        : Yardstick.momentum;
  }

  /** What was filled in; empty where nothing was yet. */
  private Optional<Wanted> wanted() {
    Optional<Double> momentum =
        scaled("momentum", MOMENTUM, Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND);
    Optional<Double> energy = scaled("energy", ENERGY, Units.JOULES_PER_FOOT_POUND);
    Optional<String> bow = request.text("like_bow");
    Optional<String> arrow = request.text("like_arrow");
    return momentum.isEmpty() && energy.isEmpty() && bow.isEmpty() && arrow.isEmpty()
        ? Optional.empty()
        : Optional.of(Wanted.of(momentum, energy, bow, arrow, yardstick()));
  }

  private Optional<Double> scaled(String name, Dimension dimension, double unit) {
    OptionalDouble si = request.quantity(name, dimension);
    return si.isPresent() ? Optional.of(si.getAsDouble() / unit) : Optional.empty();
  }

  private static boolean isEnergy(Reached reached) {
    return reached.target() instanceof Target.KineticEnergy;
  }

  private Chart least(Reached reached) {
    List<String> names = new ArrayList<>();
    List<Mark.Point> points = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("bow"),
            request.say("reach.verdict"),
            request.say("reach.least", speech.unit(ARROW_MASS)),
            request.say("interval95"),
            request.say("reach.gpp"));
    for (Reached.Bow bow : reached.bows()) {
      var interval = bow.leastIntervalKg();
      bow.leastKg()
          .ifPresent(
              kg -> {
                points.add(
                    new Mark.Point(
                        speech.in(ARROW_MASS, kg),
                        names.size(),
                        speech.in(ARROW_MASS, Math.max(0, Math.min(interval.low(), kg))),
                        speech.in(ARROW_MASS, Math.min(interval.high(), 2 * HEAVIEST_KG)),
                        bow.state().bow() + ": " + bow.verdict().words(new ReportFormat(speech))));
              });
      names.add(bow.state().bow());
      rows.add(
          bow.state().bow(),
          bow.verdict().words(new ReportFormat(speech)),
          speech.plain(ARROW_MASS, bow.leastKg()),
          speech.interval(ARROW_MASS, interval),
          speech.plain(
              MASS_FOR_WEIGHT,
              bow.gpp().orElse(Double.NaN) * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP));
    }
    return new Chart(
        "least",
        request.say("reach.least_title"),
        request.say(names.isEmpty() ? "reach.no_bow" : "reach.least_told"),
        Axis.of(request.say("reach.least", speech.unit(ARROW_MASS))),
        Axis.names("", names),
        names.isEmpty() ? List.of() : List.of(new Mark.Points("", Style.FIRST, 'x', points)),
        rows.table());
  }

  private Chart curves(Reached reached) {
    Dimension y = isEnergy(reached) ? ENERGY : MOMENTUM;
    List<Mark> marks = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(request.say("bow"), request.say("reach.with"), label(y));
    for (Reached.Bow bow : reached.bows()) {
      Style style = Style.of(marks.size());
      marks.add(line(bow, y, style));
      for (Rack.Arrow arrow : request.t().rack().arrows()) {
        String given = speech.figure(y, given(bow.anyDay().curve(), y, arrow.massKg()));
        boolean isBeyond = bow.anyDay().curve().isBeyondArrows(arrow.massKg());
        rows.add(
            bow.state().bow(),
            arrow.name(),
            isBeyond ? request.say("reach.by_curve", given) : given);
      }
    }
    double wanted = reached.target().wanted().value();
    marks.add(
        new Mark.Level(
            request.say("bow.reference", speech.plain(y, wanted)),
            Style.REFERENCE,
            'y',
            speech.in(y, wanted)));
    return new Chart(
        "curves",
        request.say("reach.curves_title"),
        request.say("reach.curves_told"),
        Axis.of(request.say("arrow_mass", speech.unit(ARROW_MASS))),
        Axis.of(label(y)),
        marks,
        rows.table());
  }

  private String label(Dimension y) {
    return request.say(y == ENERGY ? "energy" : "momentum", speech.unit(y));
  }

  private static Estimate given(StateCurve bow, Dimension y, double massKg) {
    return y == ENERGY
        ? bow.kineticEnergyJ(massKg, RackPage.COVERAGE)
        : bow.momentumNs(massKg, RackPage.COVERAGE);
  }

  /**
   * A bow's curve near the arrows shot, without its band, since bands of many bows would hide one
   * another.
   */
  private Mark line(Reached.Bow bow, Dimension y, Style style) {
    double[] shot = bow.cells().massesKg();
    Curve curve = new Curve(speech, y, massKg -> given(bow.anyDay().curve(), y, massKg));
    return curve
        .marks(
            bow.state().bow(),
            style,
            shot[0] * (1 - StateCurve.BEYOND),
            shot[shot.length - 1] * (1 + StateCurve.BEYOND))
        .get(1);
  }
}
