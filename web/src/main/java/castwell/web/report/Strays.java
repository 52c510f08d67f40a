package castwell.web.report;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.cell.CellName;
import castwell.capture.cell.SessionCells;
import castwell.capture.cell.SessionCells.Stray;
import castwell.capture.view.report.cell.StrayView;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** The strays, and shots that are only doubted: how many and which, so that a person can decide. */
public final class Strays {
  private static final int MOST_NAMED = 3;

  private Strays() {}

  public static List<String> sentences(List<StrayView> strays, ReportFormat format) {
    List<StrayView> aside = strays.stream().filter(StrayView::setAside).toList();
    List<StrayView> doubted = strays.stream().filter(stray -> !stray.setAside()).toList();
    List<String> sentences = new ArrayList<>();
    if (!aside.isEmpty()) {
      sentences.add(format.say("report.strays.set_aside", aside.size(), which(aside, format)));
    }
    if (!doubted.isEmpty()) {
      sentences.add(format.say("report.strays.doubted", doubted.size(), which(doubted, format)));
    }
    return sentences;
  }

  private static String which(List<StrayView> strays, ReportFormat format) {
    String named =
        strays.stream()
            .limit(MOST_NAMED)
            .map(
                stray ->
                    format.say(
                        "report.strays.one",
                        stray.bow(),
                        stray.arrow(),
                        format.plain(SPEED, 1, stray.speedFps() * METRES_PER_FOOT)))
            .collect(Collectors.joining(", "));
    return strays.size() > MOST_NAMED
        ? format.say("report.strays.and_more", named, strays.size() - MOST_NAMED)
        : named;
  }

  /** Those of one bow in one state. */
  public static List<StrayView> rows(BowCells.Stand stand) {
    return stand.sessions().stream()
        .flatMap(session -> rows(session).stream())
        .filter(row -> stand.state().bow().equals(row.bow()))
        .filter(row -> stand.stateName().equals(row.stateOn()))
        .toList();
  }

  /** Those of some bows in some sessions. */
  public static List<StrayView> rows(BowCells cells, Set<String> sessions, Set<String> bows) {
    return sessions.stream()
        .flatMap(session -> rows(cells.cells().ofSession(session)).stream())
        .filter(row -> bows.contains(row.bow()))
        .toList();
  }

  /** Those of a session, of all its bows. */
  public static List<StrayView> rows(SessionCells session) {
    return session.strays().stream().map(stray -> row(session, stray)).toList();
  }

  private static StrayView row(SessionCells session, Stray stray) {
    CellName name = session.all().get(stray.cell()).name();
    return new StrayView(
        stray.shot().id(),
        session.session(),
        name.bow(),
        name.state(),
        name.arrow(),
        stray.shot().speedMps() / METRES_PER_FOOT,
        stray.chance(),
        stray.isSetAside());
  }
}
