package castwell.web.report.session;

import castwell.analysis.cell.CellSummary;
import castwell.capture.cell.CellReader;
import castwell.capture.store.Transaction;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;

/** What a session's cells say, by "bow · arrow". */
public final class SessionMeans {
  private SessionMeans() {}

  public static Map<String, CellSummary> of(Transaction t, ZoneId zone, String session) {
    Map<String, CellSummary> means = new LinkedHashMap<>();
    new CellReader(t, zone)
        .ofSession(session).cells().stream()
            .filter(cell -> !cell.shots().isEmpty())
            .forEach(
                cell ->
                    means.put(
                        cell.name().bow() + " · " + cell.name().arrow(), CellSummary.of(cell)));
    return means;
  }
}
