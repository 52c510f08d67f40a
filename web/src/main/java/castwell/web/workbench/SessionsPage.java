package castwell.web.workbench;

import castwell.capture.season.SeasonLedger;
import castwell.capture.store.Sessions.Listed;
import castwell.web.chart.Chart;
import java.util.List;

/** The page of all outings, the last first, some at a time. */
public final class SessionsPage {
  private static final int MOST = 30;

  /**
   * @param older where the earlier ones are, "" where there are none
   * @param newer where the later ones are, "" where there are none
   * @param charts what days were like, beside the last sessions
   */
  public record View(List<Row> sessions, String older, String newer, List<Chart> charts) {}

  public record Row(
      String name, String started, String station, String bows, String shots, String note) {}

  private SessionsPage() {}

  public static Page of(PageRequest request) {
    int from = (int) Math.max(0, Math.min(1e9, request.number("from").orElse(0)));
    List<Listed> some = request.t().sessions().some(from, MOST + 1);
    List<Row> rows = some.stream().limit(MOST).map(session -> row(request, session)).toList();
    View view =
        new View(
            rows,
            some.size() > MOST ? "/sessions?from=" + (from + MOST) : "",
            from > 0 ? "/sessions?from=" + Math.max(0, from - MOST) : "",
            from > 0 ? List.of() : days(request));
    return new Page(MenuEntry.SESSIONS, "sessions", request.say("sessions.title"), view);
  }

  private static List<Chart> days(PageRequest request) {
    return SeasonLedger.of(request.t(), request.zone())
        .filter(season -> season.season().sessions() > 1)
        .map(season -> List.of(DaysChart.of(request.speech(), season)))
        .orElse(List.of());
  }

  private static Row row(PageRequest request, Listed session) {
    return new Row(
        session.name(),
        Days.withMinute(session.startedMs(), request.zone()),
        session.station(),
        String.join(", ", session.bows()),
        request.say("sessions.shots", session.counting(), session.passages() - session.counting()),
        session.note().orElse(""));
  }
}
