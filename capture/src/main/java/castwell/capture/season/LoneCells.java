package castwell.capture.season;

import castwell.analysis.cell.CellSums;
import castwell.analysis.outlier.StrayChances;
import castwell.analysis.season.Season;
import castwell.analysis.season.SeasonCell;
import castwell.analysis.uncertainty.TMixture;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Cells of sessions in which no cell has three shots, so that nothing there can judge a shot: one
 * that was tagged or typed wrongly would make its day unlike all others, and all days vaguer. They
 * are judged by the other sessions, as far as these tell of their bow.
 */
final class LoneCells {
  private static final int ENOUGH = 3;

  private LoneCells() {}

  /**
   * Those that are set aside.
   *
   * @param cells takes sums as a season's cells
   * @param fit fits a season to cells; not asked where there is nothing to judge, or nothing to
   *     judge by
   */
  static List<CellSums> strays(
      List<CellSums> all,
      Function<List<CellSums>, List<SeasonCell>> cells,
      Function<List<SeasonCell>, Season> fit) {
    Set<String> judged =
        all.stream()
            .filter(cell -> cell.n() >= ENOUGH)
            .map(cell -> cell.name().session())
            .collect(Collectors.toCollection(HashSet::new));
    List<SeasonCell> taken = cells.apply(all);
    List<SeasonCell> others =
        taken.stream().filter(cell -> judged.contains(cell.session())).toList();
    if (others.isEmpty() || others.size() == taken.size()) {
      return List.of();
    }
    Season season = fit.apply(others);
    List<CellSums> strays = new ArrayList<>();
    for (int c = 0; c < taken.size(); c++) {
      SeasonCell cell = taken.get(c);
      if (!judged.contains(cell.session())
          && expected(season, cell)
              .filter(log -> StrayChances.against(log, cell.meanLog()) > StrayChances.SET_ASIDE)
              .isPresent()) {
        strays.add(all.get(c));
      }
    }
    return strays;
  }

  private static Optional<TMixture> expected(Season season, SeasonCell cell) {
    return season.has(cell.state())
        ? Optional.of(
            season.state(cell.state()).nextDay(cell.massKg(), cell.setUpU(), cell.shots()))
        : Optional.empty();
  }
}
