package castwell.web.workbench;

import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.DRAW_LENGTH;
import static castwell.web.unit.Dimension.ENERGY;
import static castwell.web.unit.Dimension.FORCE;
import static castwell.web.unit.Dimension.MOMENTUM;
import static castwell.web.unit.Dimension.SHARE;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.bow.ForceDrawCurve;
import castwell.analysis.bow.JointRegion;
import castwell.analysis.bow.JointRegion.Corner;
import castwell.analysis.cell.CellSummary;
import castwell.analysis.season.StateEnergy;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Quantity;
import castwell.web.chart.Axis;
import castwell.web.chart.Chart;
import castwell.web.chart.FigureTable;
import castwell.web.chart.Mark;
import castwell.web.chart.Mark.Point;
import castwell.web.chart.Style;
import castwell.web.report.AnyDay;
import castwell.web.report.bow.BowStudy;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.Function;

/** The charts of one bow. */
final class BowCharts {
  /** More cells in one chart would hide one another. */
  private static final int MOST_CELLS = 60;

  private static final double BEYOND = 0.1;

  private final Speech speech;
  private final BowStudy study;
  private final List<CellSummary> cells;

  BowCharts(PageRequest request, BowStudy study) {
    this.speech = request.speech();
    this.study = study;
    this.cells =
        study.sessions(request.t(), request.zone(), MOST_CELLS).stream()
            .map(CellSummary::of)
            .toList();
  }

  private Axis masses() {
    return Axis.of(speech.say("arrow_mass", speech.unit(ARROW_MASS)));
  }

  private double lightest() {
    return Arrays.stream(study.cells().massesKg()).min().orElse(0) * (1 - BEYOND);
  }

  private double heaviest() {
    return Arrays.stream(study.cells().massesKg()).max().orElse(0) * (1 + BEYOND);
  }

  /**
   * Speed over arrow mass: what was shot, the trade's straight line and the curve of the virtual
   * mass.
   */
  Chart speed() {
    FigureTable.Rows rows =
        new FigureTable.Rows(
            speech.say("session"),
            speech.say("arrow"),
            speech.say("arrow_mass", speech.unit(ARROW_MASS)),
            speech.say("n"),
            speech.say("mean", speech.unit(SPEED)) + ", " + where(),
            speech.say("interval95"),
            speech.say("sd"),
            speech.say("set_aside"));
    List<Point> points = new ArrayList<>();
    for (CellSummary cell : cells) {
      Quantity mean = cell.ownMeanMps();
      Interval interval = mean.interval(RackPage.COVERAGE);
      String told = speech.interval(SPEED, interval);
      boolean isBounded = Double.isFinite(interval.low());
      points.add(
          new Point(
              speech.in(ARROW_MASS, cell.cell().massKg()),
              speech.in(SPEED, mean.value()),
              isBounded ? (Double) speech.in(SPEED, interval.low()) : null,
              isBounded ? (Double) speech.in(SPEED, interval.high()) : null,
              speech.say(
                  "bow.cell_told",
                  cell.cell().name().arrow(),
                  cell.cell().name().session(),
                  told)));
      rows.add(
          cell.cell().name().session(),
          cell.cell().name().arrow(),
          speech.plain(ARROW_MASS, cell.cell().massKg()),
          String.valueOf(cell.n()),
          speech.figure(SPEED, mean),
          told,
          speech.plain(SPEED, cell.sdMps()),
          String.valueOf(cell.cell().setAside()));
    }
    List<Mark> marks = new ArrayList<>();
    study
        .anyDay()
        .ifPresent(
            bow ->
                marks.addAll(
                    curve(SPEED, massKg -> bow.curve().speedMps(massKg, RackPage.COVERAGE))));
    line().ifPresent(marks::add);
    if (!points.isEmpty()) {
      marks.add(Mark.Points.of(speech.say("bow.cells"), Style.FIRST, points));
    }
    return new Chart(
        "speed",
        speech.say("bow.speed_title"),
        speech.say(points.isEmpty() ? "bow.speed_empty" : "bow.speed_told"),
        masses(),
        Axis.of(speech.say("speed", speech.unit(SPEED)) + ", " + where()),
        marks,
        rows.table());
  }

  private String where() {
    return speech.say(study.cells().areAtBow() ? "speed.at_bow" : "speed.at_gates");
  }

  private List<Mark> curve(Dimension y, DoubleFunction<Estimate> of) {
    return new Curve(speech, y, of)
        .marks(speech.say("bow.curve"), Style.FIRST, lightest(), heaviest());
  }

  private Optional<Mark> line() {
    return study
        .cells()
        .line()
        .map(
            line ->
                new Mark.Line(
                    speech.say("bow.line"),
                    Style.SECOND,
                    new double[] {
                      speech.in(ARROW_MASS, lightest()), speech.in(ARROW_MASS, heaviest())
                    },
                    new double[] {
                      speech.in(SPEED, line.at(lightest())), speech.in(SPEED, line.at(heaviest()))
                    }));
  }

  Chart momentum(OptionalDouble referenceNs) {
    return over(
        "momentum",
        MOMENTUM,
        known(bow -> massKg -> bow.curve().momentumNs(massKg, RackPage.COVERAGE)),
        referenceNs);
  }

  Chart energy(OptionalDouble referenceJ) {
    return over(
        "energy",
        ENERGY,
        known(bow -> massKg -> bow.curve().kineticEnergyJ(massKg, RackPage.COVERAGE)),
        referenceJ);
  }

  /** How much of the energy that the bow gives reaches the arrow. */
  Chart share() {
    Optional<DoubleFunction<Estimate>> share =
        study
            .anyDay()
            .map(AnyDay::energy)
            .filter(StateEnergy::isSplit)
            .map(energy -> massKg -> energy.share(massKg, RackPage.COVERAGE).orElseThrow());
    return over("share", SHARE, share, OptionalDouble.empty());
  }

  private Optional<DoubleFunction<Estimate>> known(Function<AnyDay, DoubleFunction<Estimate>> of) {
    return study.anyDay().map(of);
  }

  /** What the bow gives over the arrow's mass on any day, with the wanted value drawn in. */
  private Chart over(
      String id, Dimension y, Optional<DoubleFunction<Estimate>> of, OptionalDouble reference) {
    List<Mark> marks = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            speech.say("arrow_mass", speech.unit(ARROW_MASS)),
            speech.say(id, speech.unit(y)),
            speech.say("interval95"));
    of.ifPresent(
        given -> {
          marks.addAll(curve(y, given));
          Arrays.stream(study.cells().massesKg())
              .forEach(massKg -> row(rows, y, massKg, given.apply(massKg)));
          reference.ifPresent(
              value ->
                  marks.add(
                      new Mark.Level(
                          speech.say("bow.reference", speech.plain(y, value)),
                          Style.REFERENCE,
                          'y',
                          speech.in(y, value))));
        });
    String told = marks.isEmpty() ? "bow." + id + "_none" : "bow." + id + "_told";
    return new Chart(
        id,
        speech.say("bow." + id + "_title"),
        speech.say(told),
        masses(),
        Axis.of(speech.say(id, speech.unit(y))),
        marks,
        rows.table());
  }

  private void row(FigureTable.Rows rows, Dimension y, double massKg, Estimate value) {
    rows.add(
        speech.plain(ARROW_MASS, massKg),
        speech.figure(y, value),
        speech.interval(y, value.interval()));
  }

  /** Which energies and virtual masses agree with the shots of all days together. */
  Chart region() {
    List<Mark> marks = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            speech.say("bow.what"), speech.say("bow.estimate"), speech.say("interval95"));
    study
        .anyDay()
        .map(AnyDay::energy)
        .filter(StateEnergy::isSplit)
        .ifPresent(energy -> regionOf(energy, marks, rows));
    return new Chart(
        "region",
        speech.say("bow.region_title"),
        speech.say(marks.isEmpty() ? "bow.no_region" : "bow.region_told"),
        Axis.of(speech.say("bow.energy_axis", speech.unit(ENERGY))),
        Axis.of(speech.say("bow.virtual_axis", speech.unit(ARROW_MASS))),
        marks,
        rows.table());
  }

  private void regionOf(StateEnergy energy, List<Mark> marks, FigureTable.Rows rows) {
    Estimate joules = energy.energyJ(RackPage.COVERAGE).orElseThrow();
    Estimate mass = AnyDay.notBelowZero(energy.virtualMassKg(RackPage.COVERAGE).orElseThrow());
    marks.addAll(
        regionMarks(
            speech,
            study.stateName(),
            Style.FIRST,
            new Corner(joules.value(), mass.value()),
            energy.region(RackPage.COVERAGE).orElseThrow()));
    rows.add(
        speech.say("bow.energy_axis", speech.unit(ENERGY)),
        speech.figure(ENERGY, joules),
        speech.interval(ENERGY, joules.interval()));
    rows.add(
        speech.say("bow.virtual_axis", speech.unit(ARROW_MASS)),
        speech.figure(ARROW_MASS, mass),
        speech.interval(ARROW_MASS, mass.interval()));
  }

  /** An outline with the estimate inside. */
  static List<Mark> regionMarks(
      Speech speech, String name, Style style, Corner estimate, JointRegion region) {
    double[] x =
        region.corners().stream()
            .mapToDouble(Corner::energyJ)
            .map(j -> speech.in(ENERGY, j))
            .toArray();
    double[] y =
        region.corners().stream()
            .mapToDouble(Corner::virtualMassKg)
            .map(kg -> speech.in(ARROW_MASS, kg))
            .toArray();
    Point inside =
        Point.of(
            speech.in(ENERGY, estimate.energyJ()),
            speech.in(ARROW_MASS, estimate.virtualMassKg()),
            name);
    return List.of(
        new Mark.Region(name, style, x, y), Mark.Points.of(name, style, List.of(inside)));
  }

  /** The force-draw curve; the area below it is the stored energy. */
  Chart forceDraw() {
    List<Mark> marks = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            speech.say("bow.draw_length", speech.unit(DRAW_LENGTH)),
            speech.say("bow.draw_force", speech.unit(FORCE)),
            speech.say("bow.let_down", speech.unit(FORCE)));
    study.forceDraw().ifPresent(curve -> forceDrawMarks(curve, marks, rows));
    return new Chart(
        "force-draw",
        speech.say("bow.force_title"),
        study
            .forceDraw()
            .map(c -> speech.say("bow.force_told", speech.plain(ENERGY, c.storedEnergyJ())))
            .orElseGet(() -> speech.say("bow.force_empty")),
        Axis.of(speech.say("bow.draw_length", speech.unit(DRAW_LENGTH))),
        Axis.of(speech.say("bow.draw_force", speech.unit(FORCE))).holding(0, 0),
        marks,
        rows.table());
  }

  private void forceDrawMarks(ForceDrawCurve curve, List<Mark> marks, FigureTable.Rows rows) {
    List<ForceDrawCurve.Point> points = curve.points();
    double[] x =
        points.stream().mapToDouble(p -> speech.in(DRAW_LENGTH, p.drawLengthM())).toArray();
    double[] force = points.stream().mapToDouble(p -> speech.in(FORCE, p.drawN())).toArray();
    marks.add(new Mark.Band(speech.say("bow.stored"), Style.FIRST, x, new double[x.length], force));
    marks.add(new Mark.Line(speech.say("bow.drawn"), Style.FIRST, x, force));
    List<ForceDrawCurve.Point> down =
        points.stream().filter(p -> p.letDownN().isPresent()).toList();
    if (!down.isEmpty()) {
      marks.add(
          new Mark.Line(
              speech.say("bow.let_down_slowly"),
              Style.SECOND,
              down.stream().mapToDouble(p -> speech.in(DRAW_LENGTH, p.drawLengthM())).toArray(),
              down.stream()
                  .mapToDouble(p -> speech.in(FORCE, p.letDownN().orElseThrow()))
                  .toArray()));
    }
    points.forEach(
        p ->
            rows.add(
                speech.plain(DRAW_LENGTH, p.drawLengthM()),
                speech.plain(FORCE, p.drawN()),
                p.letDownN().isPresent() ? speech.plain(FORCE, p.letDownN()) : "–"));
  }
}
