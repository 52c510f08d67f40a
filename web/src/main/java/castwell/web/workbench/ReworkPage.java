package castwell.web.workbench;

import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.ENERGY;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.bow.JointRegion;
import castwell.analysis.compare.Change;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.command.Refused;
import castwell.web.chart.Axis;
import castwell.web.chart.Chart;
import castwell.web.chart.FigureTable;
import castwell.web.chart.Mark;
import castwell.web.chart.Mark.Point;
import castwell.web.chart.Style;
import castwell.web.report.ReportFormat;
import castwell.web.report.rework.Day;
import castwell.web.report.rework.ReworkChoice;
import castwell.web.report.rework.ReworkReport.Question;
import castwell.web.report.rework.Reworked;
import castwell.web.text.Speech;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The page that tells whether a rework helped, or it was only the day. */
public final class ReworkPage {
  private final PageRequest request;
  private final Speech speech;

  /**
   * @param refused why there is no answer, "" if there is one
   */
  public record View(ReworkChoice form, String refused, List<String> answer, List<Chart> charts) {}

  private ReworkPage(PageRequest request) {
    this.request = request;
    this.speech = request.speech();
  }

  public static Page of(PageRequest request) {
    return new Page(
        MenuEntry.REWORK, "rework", request.say("rework.title"), new ReworkPage(request).view());
  }

  private View view() {
    ReworkChoice choice = ReworkChoice.of(request.t(), request.zone(), request.text("bow"));
    if (choice.bow().isEmpty()) {
      return new View(choice, request.say("rework.empty"), List.of(), List.of());
    }
    String before = request.text("before").filter(choice.days()::contains).orElse(choice.before());
    String after = request.text("after").filter(choice.days()::contains).orElse(choice.after());
    List<String> controls =
        request.text("before").isPresent() ? request.texts("control") : choice.controls();
    ReworkChoice form = choice.asking(before, after, controls);
    if (choice.days().size() < 2) {
      return new View(form, request.say("rework.once", choice.bow()), List.of(), List.of());
    }
    try {
      Question question = new Question(choice.bow(), before, after, controls);
      Reworked reworked = Reworked.of(request.t(), request.zone(), question, request.request());
      List<Chart> charts = new ArrayList<>(List.of(changes(reworked)));
      regions(reworked).ifPresent(charts::add);
      return new View(
          form,
          "",
          reworked.sentences(
              request.t(), request.zone(), request.request(), new ReportFormat(speech)),
          charts);
    } catch (Refused refused) {
      return new View(form, request.speech().say(refused.phrase()), List.of(), List.of());
    }
  }

  private Chart changes(Reworked reworked) {
    List<String> names = new ArrayList<>();
    List<Point> points = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("rework.what"),
            request.say("rework.change", speech.unit(SPEED)),
            request.say("interval95"),
            request.say("rework.n"));
    add(names, points, rows, request.say("rework.effect"), reworked.effect(), "");
    reworked
        .sameGpp()
        .ifPresent(cast -> add(names, points, rows, request.say("rework.at_gpp"), cast, ""));
    for (Change.OfArrow arrow : reworked.change().arrows()) {
      String name =
          request.say("rework.arrow", arrow.arrow(), speech.plain(ARROW_MASS, arrow.massKg()));
      add(names, points, rows, name, arrow.changeMps().only(Kind.OWN), n(arrow));
    }
    for (Change other : reworked.others()) {
      String name = request.say("rework.control", other.bow());
      add(names, points, rows, name, other.meanMps().only(Kind.OWN), "");
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

  private static String n(Change.OfArrow arrow) {
    return arrow.nBefore() + " + " + arrow.nAfter();
  }

  private void add(
      List<String> names,
      List<Point> points,
      FigureTable.Rows rows,
      String name,
      Quantity change,
      String n) {
    Interval interval = change.interval(RackPage.COVERAGE);
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
    rows.add(name, speech.figure(SPEED, change), told, n.isEmpty() ? "–" : n);
  }

  /** Energy and virtual mass before and after, where the shots of both days determine them. */
  private Optional<Chart> regions(Reworked reworked) {
    List<Mark> marks = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("rework.day"),
            request.say("bow.energy_axis", speech.unit(ENERGY)),
            request.say("bow.virtual_axis", speech.unit(ARROW_MASS)));
    region(marks, rows, reworked.bow().before(), request.say("rework.before"), Style.FIRST);
    region(marks, rows, reworked.bow().after(), request.say("rework.after"), Style.SECOND);
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

  private void region(List<Mark> marks, FigureTable.Rows rows, Day day, String name, Style style) {
    day.bowCells()
        .fit()
        .filter(fit -> fit.degreesOfFreedom() > 0)
        .ifPresent(
            fit -> {
              JointRegion region = JointRegion.of(fit, RackPage.COVERAGE);
              marks.addAll(
                  BowCharts.regionMarks(
                      speech,
                      name,
                      style,
                      new JointRegion.Corner(fit.energyJ(), fit.virtualMassKg()),
                      region));
              rows.add(
                  name,
                  speech.figure(ENERGY, fit.energyJ(), fit.energySe()),
                  speech.figure(ARROW_MASS, fit.virtualMassKg(), fit.virtualMassSe()));
            });
  }
}
