package castwell.web.report;

import castwell.analysis.outlier.PooledStrays.Stray;
import castwell.capture.cell.SessionCells;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The strays of a bow, and those that are only doubted: told, so that a person can decide. */
public final class Strays {
  private Strays() {}

  public static List<String> sentences(BowCells.Stand stand) {
    int excluded = count(stand, true);
    int doubted = count(stand, false);
    List<String> sentences = new ArrayList<>();
    if (excluded > 0) {
      sentences.add(ReportFormat.TRADE.say("report.strays.set_aside", excluded));
    }
    if (doubted > 0) {
      sentences.add(ReportFormat.TRADE.say("report.strays.doubted", doubted));
    }
    return sentences;
  }

  private static int count(BowCells.Stand stand, boolean excluded) {
    return (int) rows(stand).stream().filter(row -> row.get("set_aside").equals(excluded)).count();
  }

  public static List<Map<String, Object>> rows(BowCells.Stand stand) {
    return stand.sessions().stream()
        .flatMap(
            session ->
                rows(session).stream()
                    .filter(
                        row ->
                            stand.state().bow().equals(row.get("bow"))
                                && stand.stateName().equals(row.get("state_on"))))
        .toList();
  }

  public static List<Map<String, Object>> rows(SessionCells session) {
    List<Map<String, Object>> rows = new ArrayList<>();
    session.findings().excluded().forEach(stray -> rows.add(row(session, stray, true)));
    session.findings().doubted().forEach(stray -> rows.add(row(session, stray, false)));
    return rows;
  }

  private static Map<String, Object> row(SessionCells session, Stray stray, boolean excluded) {
    var name = session.all().get(stray.cell()).name();
    return new Fields()
        .put("shot_id", session.id(stray))
        .put("session", session.session())
        .put("bow", name.bow())
        .put("state_on", name.state())
        .put("arrow", name.arrow())
        .put("studentized", stray.studentized())
        .put("p", stray.adjustedP())
        .put("set_aside", excluded)
        .map();
  }
}
