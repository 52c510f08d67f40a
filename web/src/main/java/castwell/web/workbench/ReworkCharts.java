package castwell.web.workbench;

import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.ENERGY;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.bow.JointRegion.Corner;
import castwell.analysis.compare.ArrowChange;
import castwell.analysis.season.StateEnergy;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import castwell.web.chart.Axis;
import castwell.web.chart.Chart;
import castwell.web.chart.FigureTable;
import castwell.web.chart.Mark;
import castwell.web.chart.Mark.Point;
import castwell.web.chart.Style;
import castwell.web.report.rework.Reworked;
import castwell.web.text.Speech;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a rework changed, in pictures. */
final class ReworkCharts {
  private final PageRequest request;
  private final Speech speech;
  private final Reworked reworked;

  ReworkCharts(PageRequest request, Reworked reworked) {
    this.request = request;
    this.speech = request.speech();
    this.reworked = reworked;
  }

  /** The answer on any day first, then each arrow by its repeats alone. */
  Chart changes() {
    List<String> names = new ArrayList<>();
    List<Point> points = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("rework.what"),
            request.say("rework.change", speech.unit(SPEED)),
            request.say("interval95"),
            request.say("rework.n"));
    String mass = speech.plain(ARROW_MASS, Math.rint(reworked.massKg() * 1e6) / 1e6);
    add(names, points, rows, request.say("rework.effect", mass), reworked.changeMps(), "–");
    add(
        names,
        points,
        rows,
        request.say("rework.at_gpp"),
        reworked.castChangeMps(request.request()),
        "–");
    for (ArrowChange arrow : reworked.arrows()) {
      String key = arrow.bow().equals(reworked.bow()) ? "rework.arrow" : "rework.control";
      String name =
          request.say(key, arrow.arrow(), speech.plain(ARROW_MASS, arrow.massKg()), arrow.bow());
      Estimate change =
          new Estimate(arrow.changeMps().value(), arrow.changeMps().interval(RackPage.COVERAGE));
      add(names, points, rows, name, change, arrow.nBefore() + " + " + arrow.nAfter());
    }
    return new Chart(
        "changes",
        request.say("rework.changes_title"),
        request.say("rework.changes_told"),
        Axis.of(request.say("rework.change", speech.unit(SPEED))).holding(0, 0),
        Axis.names("", names),
        List.of(
            new Mark.Points("", Style.FIRST, 'x', points),
            new Mark.Level(request.say("rework.none"), Style.REFERENCE, 'x', 0)),
        rows.table());
  }

  private void add(
      List<String> names,
      List<Point> points,
      FigureTable.Rows rows,
      String name,
      Estimate change,
      String n) {
    Interval interval = change.interval();
    boolean isBounded = Double.isFinite(interval.low());
    String told = speech.interval(SPEED, interval);
    points.add(
        new Point(
            speech.in(SPEED, change.value()),
            names.size(),
            isBounded ? (Double) speech.in(SPEED, interval.low()) : null,
            isBounded ? (Double) speech.in(SPEED, interval.high()) : null,
            name + ": " + told));
    names.add(name);
    rows.add(name, speech.figure(SPEED, change.value(), interval.halfWidth() / 2), told, n);
  }

  /** Energy and virtual mass before and after, where the arrows' masses split them. */
  Optional<Chart> regions() {
    List<Mark> marks = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("rework.day"),
            request.say("bow.energy_axis", speech.unit(ENERGY)),
            request.say("bow.virtual_axis", speech.unit(ARROW_MASS)));
    StateEnergy before = reworked.rework().before().energy();
    StateEnergy after = reworked.rework().after().energy();
    region(marks, rows, before, request.say("rework.before"), Style.FIRST);
    region(marks, rows, after, request.say("rework.after"), Style.SECOND);
    return marks.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Chart(
                "regions",
                request.say("rework.regions_title"),
                request.say("rework.regions_told"),
                Axis.of(request.say("bow.energy_axis", speech.unit(ENERGY))),
                Axis.of(request.say("bow.virtual_axis", speech.unit(ARROW_MASS))),
                marks,
                rows.table()));
  }

  private void region(
      List<Mark> marks, FigureTable.Rows rows, StateEnergy energy, String name, Style style) {
    energy
        .region(RackPage.COVERAGE)
        .ifPresent(
            region -> {
              Estimate e = energy.energyJ(RackPage.COVERAGE).orElseThrow();
              Estimate k = energy.virtualMassKg(RackPage.COVERAGE).orElseThrow();
              Corner at = new Corner(e.value(), k.value());
              marks.addAll(BowCharts.regionMarks(speech, name, style, at, region));
              rows.add(
                  name,
                  speech.interval(ENERGY, e.interval()),
                  speech.interval(ARROW_MASS, k.interval()));
            });
  }
}
