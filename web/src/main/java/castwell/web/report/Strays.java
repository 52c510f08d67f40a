package castwell.web.report;

import castwell.analysis.outlier.PooledStrays.Stray;
import castwell.capture.cell.SessionCells;
import castwell.capture.view.report.cell.StrayView;
import java.util.ArrayList;
import java.util.List;

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
    return (int) rows(stand).stream().filter(row -> row.setAside() == excluded).count();
  }

  public static List<StrayView> rows(BowCells.Stand stand) {
    return stand.sessions().stream()
        .flatMap(
            session ->
                rows(session).stream()
                    .filter(
                        row ->
                            stand.state().bow().equals(row.bow())
                                && stand.stateName().equals(row.stateOn())))
        .toList();
  }

  public static List<StrayView> rows(SessionCells session) {
    List<StrayView> rows = new ArrayList<>();
    session.findings().excluded().forEach(stray -> rows.add(row(session, stray, true)));
    session.findings().doubted().forEach(stray -> rows.add(row(session, stray, false)));
    return rows;
  }

  private static StrayView row(SessionCells session, Stray stray, boolean excluded) {
    var name = session.all().get(stray.cell()).name();
    return new StrayView(
        session.id(stray),
        session.session(),
        name.bow(),
        name.state(),
        name.arrow(),
        stray.studentized(),
        stray.adjustedP(),
        excluded);
  }
}
