package castwell.web.workbench;

import static castwell.web.unit.Dimension.SHARE;

import castwell.analysis.season.SessionDays.Day;
import castwell.analysis.uncertainty.Estimate;
import castwell.capture.season.KnownSeason;
import castwell.web.chart.Axis;
import castwell.web.chart.Chart;
import castwell.web.chart.FigureTable;
import castwell.web.chart.Mark;
import castwell.web.chart.Mark.Point;
import castwell.web.chart.Style;
import castwell.web.text.Speech;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** What each session's day did to all bows alike, with what its weather explains of that. */
final class DaysChart {
  /** More rows in one chart would be too many to read. */
  private static final int MOST = 30;

  private DaysChart() {}

  static Chart of(Speech speech, KnownSeason season) {
    List<Day> all = season.days();
    List<Day> last = new ArrayList<>(all.subList(Math.max(0, all.size() - MOST), all.size()));
    Collections.reverse(last);
    boolean isExplained = !season.conditions().isEmpty();
    FigureTable.Rows rows =
        new FigureTable.Rows(
            speech.say("session"),
            speech.say("sessions.day", speech.unit(SHARE)),
            speech.say("interval95"),
            speech.say("sessions.explained"));
    List<String> names = new ArrayList<>();
    List<Point> days = new ArrayList<>();
    List<Point> weather = new ArrayList<>();
    for (Day day : last) {
      Estimate effect = day.effect().estimate(RackPage.COVERAGE).rising(Math::expm1);
      double explained = Math.expm1(day.explained());
      String told = speech.interval(SHARE, effect.interval());
      int row = names.size();
      names.add(day.session());
      days.add(
          new Point(
              speech.in(SHARE, effect.value()),
              row,
              speech.in(SHARE, effect.interval().low()),
              speech.in(SHARE, effect.interval().high()),
              day.session() + ": " + told));
      weather.add(
          Point.of(
              speech.in(SHARE, explained),
              row,
              speech.say("sessions.explained_told", day.session())));
      rows.add(
          day.session(),
          speech.figure(SHARE, effect),
          told,
          isExplained ? speech.plain(SHARE, explained) : "–");
    }
    List<Mark> marks = new ArrayList<>();
    marks.add(new Mark.Points(speech.say("sessions.day_dots"), Style.FIRST, 'x', days));
    if (isExplained) {
      marks.add(new Mark.Points(speech.say("sessions.explained"), Style.SECOND, 'x', weather));
    }
    marks.add(new Mark.Level(speech.say("sessions.usual"), Style.REFERENCE, 'x', 0));
    return new Chart(
        "days",
        speech.say("sessions.days_title"),
        speech.say(isExplained ? "sessions.days_explained" : "sessions.days_told"),
        Axis.of(speech.say("sessions.day", speech.unit(SHARE))).holding(0, 0),
        Axis.names("", names),
        marks,
        rows.table());
  }
}
