package castwell.web.season;

import castwell.capture.view.report.cell.CellView;
import castwell.capture.view.report.cell.StrayView;
import castwell.capture.view.report.session.SessionReportView;
import castwell.capture.view.report.session.SideBySideView;
import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;

/** What was told of each session, today, with these arrows; and the strays found in it. */
record CheckedSessions(TrueSeason truth, TrueCells cells, BiConsumer<String, Boolean> counted) {
  static final String MISSED = "plucked missed";
  static final String LOST = "good ones lost";

  void check(List<SessionReportView> sessions) {
    sessions.forEach(this::session);
    strays(sessions);
  }

  private void add(String column, boolean is) {
    counted.accept(column, is);
  }

  /** Today's answers, with these arrows: of the last session's first cell, and of two bows. */
  private void session(SessionReportView session) {
    CellView first = session.cells().get(0);
    first
        .figures()
        .ifPresent(
            figures -> {
              double shown = cells.log(first) + truth.displayError(session.session());
              add("cell, today", Checked.holds(figures.ci95TodayFps(), Math.exp(shown)));
            });
    session.drift().ifPresent(drift -> add("drift said", drift.p() < 0.05));
    add("first shots said", session.firstShots().stream().anyMatch(f -> f.pHolm() < 0.05));
    for (SideBySideView pair : session.sideBySide()) {
      List<CellView> one = of(session, pair.bow());
      List<CellView> other = of(session, pair.other());
      Set<String> both = arrows(one);
      both.retainAll(arrows(other));
      if (truth.shooting().sessions() > 0) {
        double log = mean(one, both) - mean(other, both);
        add("side by side", Checked.holds(pair.ci95TodayPercent(), 100 * Math.expm1(log)));
      }
    }
  }

  private static List<CellView> of(SessionReportView session, String bow) {
    return session.cells().stream().filter(cell -> cell.bow().equals(bow)).toList();
  }

  private static Set<String> arrows(List<CellView> cells) {
    return cells.stream()
        .filter(cell -> cell.n() > 0)
        .map(CellView::arrow)
        .collect(Collectors.toSet());
  }

  private double mean(List<CellView> cells, Set<String> arrows) {
    return cells.stream()
        .filter(cell -> arrows.contains(cell.arrow()))
        .mapToDouble(this.cells::log)
        .average()
        .orElseThrow();
  }

  private void strays(List<SessionReportView> sessions) {
    if (!truth.shooting().release().isPlucked()) {
      return;
    }
    Set<String> aside =
        sessions.stream()
            .flatMap(session -> session.strays().stream())
            .filter(StrayView::setAside)
            .map(StrayView::shotId)
            .collect(Collectors.toSet());
    for (int s = 1; s <= truth.shots().count(); s++) {
      String id = "s" + s;
      if (truth.shots().plucked().containsKey(id)) {
        add(MISSED, !aside.contains(id));
      } else {
        add(LOST, aside.contains(id));
      }
    }
  }
}
