package castwell.web.workbench;

import static castwell.web.unit.Dimension.DRAW_LENGTH;
import static castwell.web.unit.Dimension.FORCE;
import static castwell.web.unit.Dimension.LENGTH;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.compare.CastRanking.Entry;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import castwell.capture.measure.BowMeasure;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.web.chart.Axis;
import castwell.web.chart.Chart;
import castwell.web.chart.FigureTable;
import castwell.web.chart.Mark;
import castwell.web.chart.Mark.Point;
import castwell.web.chart.Style;
import castwell.web.report.DayWords;
import castwell.web.report.ReportFormat;
import castwell.web.report.SpeedNote;
import castwell.web.report.ranking.Standings;
import castwell.web.report.ranking.Standings.Standing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The page of all bows side by side. */
public final class RackPage {
  static final double COVERAGE = 0.95;

  private final PageRequest request;
  private final Standings standings;
  private final Set<Long> retired;

  /**
   * @param answer what the comparison says
   * @param bows one card each, the fastest first, those without a cast after them
   */
  public record View(
      List<String> answer, Chart cast, Chart follow, List<Card> bows, BowFields fields) {}

  /**
   * @param letters bows that share a letter can't be told apart by their casts
   */
  public record Card(
      String name,
      String draw,
      String since,
      String cast,
      String letters,
      String shots,
      boolean retired) {}

  private RackPage(PageRequest request) {
    this.request = request;
    this.retired = request.t().retirements().bows();
    this.standings = Standings.of(request.t(), request.zone(), request.request());
  }

  public static Page of(PageRequest request) {
    return new Page(
        MenuEntry.RACK, "rack", request.say("rack.title"), new RackPage(request).view());
  }

  private View view() {
    return new View(
        answer(),
        castChart(),
        followChart(),
        cards(),
        BowFields.of(request.speech(), request.zone(), request.now(), Optional.empty()));
  }

  private List<String> answer() {
    List<Entry> ranked = standings.ranking().bows();
    if (ranked.isEmpty()) {
      return List.of();
    }
    List<String> answer = new ArrayList<>();
    Entry best = ranked.get(0);
    List<String> alike =
        standings.ranking().groups().stream()
            .filter(group -> group.contains(best.bow()))
            .flatMap(List::stream)
            .distinct()
            .filter(bow -> !bow.equals(best.bow()))
            .toList();
    String cast = request.speech().figure(SPEED, best.castMps(COVERAGE));
    if (ranked.size() == 1) {
      answer.add(request.say("rack.alone", best.bow(), cast));
    } else if (alike.isEmpty()) {
      answer.add(request.say("rack.fastest", best.bow(), cast));
    } else {
      answer.add(request.say("rack.fastest_unsure", best.bow(), cast, String.join(", ", alike)));
    }
    standings.bows().stream()
        .flatMap(bow -> bow.anyDay().stream())
        .findFirst()
        .ifPresent(
            bow -> answer.addAll(DayWords.of(bow.season(), new ReportFormat(request.speech()))));
    return SpeedNote.ofBows(
            standings.bows().stream().filter(bow -> bow.cast().isPresent()).map(Standing::cells))
        .in(answer, request.t(), new ReportFormat(request.speech()));
  }

  private Chart castChart() {
    List<Entry> ranked = standings.ranking().bows();
    List<Point> points = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("bow"),
            request.say("rack.cast", request.speech().unit(SPEED)),
            request.say("interval95"),
            request.say("shots"),
            request.say("rack.group"));
    Map<String, String> letters = standings.letters();
    for (int i = 0; i < ranked.size(); i++) {
      Entry entry = ranked.get(i);
      Estimate cast = entry.castMps(COVERAGE);
      Interval interval = cast.interval();
      String told = request.speech().interval(SPEED, interval);
      points.add(
          new Point(
              speed(cast.value()),
              i,
              speed(interval.low()),
              speed(interval.high()),
              entry.bow() + ": " + told));
      rows.add(
          entry.bow(),
          request.speech().figure(SPEED, cast),
          told,
          String.valueOf(standings.of(entry.bow()).orElseThrow().n()),
          letters.get(entry.bow()));
    }
    List<Mark> marks =
        points.isEmpty()
            ? List.of()
            : List.of(new Mark.Points("", Style.FIRST, 'x', List.copyOf(points)));
    return new Chart(
        "cast",
        request.say("rack.cast_title"),
        request.say(points.isEmpty() ? "rack.cast_empty" : "rack.cast_told"),
        Axis.of(request.say("rack.cast", request.speech().unit(SPEED))),
        Axis.names("", ranked.stream().map(entry -> named(entry.bow(), letters)).toList()),
        marks,
        rows.table());
  }

  private static String named(String bow, Map<String, String> letters) {
    return bow + " (" + letters.get(bow) + ")";
  }

  private double speed(double mps) {
    return request.speech().in(SPEED, mps);
  }

  /** How far behind the back the unstrung tips stayed, over the bows' lives. */
  private Chart followChart() {
    List<Mark> marks = new ArrayList<>();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("bow"), request.say("rack.since"), request.say("rack.follow"));
    for (Rack.Named bow : request.t().rack().bowNames()) {
      List<BowState> states =
          request.t().rack().states(bow.id()).stream()
              .filter(state -> state.measures().number(BowMeasure.STRING_FOLLOW).isPresent())
              .toList();
      Style style = Style.of(marks.size() / 2);
      List<Point> points = states.stream().map(this::follow).toList();
      states.forEach(
          state ->
              rows.add(
                  bow.name(),
                  Days.of(state.since(), request.zone()),
                  request
                      .speech()
                      .plain(LENGTH, state.measures().number(BowMeasure.STRING_FOLLOW))));
      if (!points.isEmpty()) {
        marks.add(Mark.Points.of(bow.name(), style, points));
        marks.add(new Mark.Line(bow.name(), style, xs(points), ys(points)));
      }
    }
    return new Chart(
        "follow",
        request.say("rack.follow_title"),
        request.say(marks.isEmpty() ? "rack.follow_empty" : "rack.follow_told"),
        Axis.dates(""),
        Axis.of(request.say("rack.follow") + " " + request.speech().unit(LENGTH)).holding(0, 0),
        marks,
        rows.table());
  }

  private Point follow(BowState state) {
    double m = state.measures().number(BowMeasure.STRING_FOLLOW).orElseThrow();
    return Point.of(
        state.since().toEpochMilli(),
        request.speech().in(LENGTH, m),
        state.bow()
            + ", "
            + Days.of(state.since(), request.zone())
            + ": "
            + request.speech().plain(LENGTH, m));
  }

  private static double[] xs(List<Point> points) {
    return points.stream().mapToDouble(Point::x).toArray();
  }

  private static double[] ys(List<Point> points) {
    return points.stream().mapToDouble(Point::y).toArray();
  }

  private List<Card> cards() {
    List<Standing> order = new ArrayList<>();
    standings.ranking().bows().forEach(entry -> order.add(standings.of(entry.bow()).orElseThrow()));
    standings.bows().stream().filter(bow -> bow.cast().isEmpty()).forEach(order::add);
    order.sort(Comparator.comparing(bow -> retired.contains(bow.state().bowId())));
    Map<String, String> letters = standings.letters();
    return order.stream().map(bow -> card(bow, letters)).toList();
  }

  private Card card(Standing bow, Map<String, String> letters) {
    return new Card(
        bow.state().bow(),
        request.say(
            "bow.draw",
            request.speech().plain(FORCE, bow.state().drawWeightN()),
            request.speech().plain(DRAW_LENGTH, bow.state().drawLengthM())),
        bow.stateName(),
        bow.cast()
            .map(cast -> request.speech().figure(SPEED, cast.anyDayMps()))
            .orElseGet(() -> request.say("rack.no_cast")),
        letters.getOrDefault(bow.state().bow(), ""),
        request.say("rack.shots_since", bow.n(), Days.ofState(bow.stateName())),
        retired.contains(bow.state().bowId()));
  }
}
