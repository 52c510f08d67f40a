package castwell.web.report.session;

import castwell.analysis.cell.Cell;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.season.KnownSeason;
import castwell.capture.view.report.session.SideBySideView;
import castwell.web.report.ReportColumn;
import castwell.web.report.Trade;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The bows of one session against each other, today and with these arrows. */
final class SideBySide {
  static final List<ReportColumn<SideBySideView>> COLUMNS =
      List.of(
          ReportColumn.text("bow", "bow", SideBySideView::bow),
          ReportColumn.text("other", "than", SideBySideView::other),
          new ReportColumn<>(
              "difference_percent", "faster by %", 1, SideBySideView::differencePercent),
          new ReportColumn<>(
              "ci95_today_percent", "95 % today", 1, SideBySideView::ci95TodayPercent),
          new ReportColumn<>("p", "p", 3, SideBySideView::p));

  private SideBySide() {}

  /** Each pair of bows with an arrow in common; of a bow in several states the last one counts. */
  static List<SideBySideView> rows(List<Cell> cells, Optional<KnownSeason> season) {
    Map<String, Cell> bows = new LinkedHashMap<>();
    cells.stream()
        .filter(cell -> !cell.shots().isEmpty())
        .forEach(cell -> bows.put(cell.name().bow(), cell));
    List<Cell> all = List.copyOf(bows.values());
    List<SideBySideView> rows = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      for (int j = i + 1; j < all.size(); j++) {
        row(all.get(i), all.get(j), season).ifPresent(rows::add);
      }
    }
    return rows;
  }

  private static Optional<SideBySideView> row(Cell bow, Cell other, Optional<KnownSeason> season) {
    return season
        .flatMap(
            known ->
                known.differenceToday(
                    bow.name().bow(),
                    bow.name().state(),
                    other.name().bow(),
                    other.name().state(),
                    bow.name().session()))
        .map(difference -> difference.only(Kind.OWN))
        .map(difference -> row(bow, other, difference));
  }

  private static SideBySideView row(Cell bow, Cell other, Quantity difference) {
    Estimate share =
        new Estimate(difference.value(), difference.interval(Trade.COVERAGE)).rising(Math::expm1);
    return new SideBySideView(
        bow.name().bow(),
        other.name().bow(),
        Trade.value(0.01, share),
        Trade.ci95(0.01, share),
        difference.pValue());
  }
}
