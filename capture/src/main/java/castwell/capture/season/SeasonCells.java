package castwell.capture.season;

import castwell.analysis.cell.CellSums;
import castwell.analysis.season.SeasonCell;
import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Cells as a season takes them in. A bow's speeds are all those at the bow; where that of one of
 * its cells isn't known, all are those at the gates. A set-up of the gates that served one session
 * is that session's own error; one that served several, or a session that had several, is an error
 * that their cells share, which no number of days makes smaller.
 */
final class SeasonCells {
  /** Of an arrow's mass, by a scale that shows whole grains (common practice, no source). */
  private static final double SCALE_U_KG = Units.KILOGRAMS_PER_GRAIN;

  private final List<CellSums> sums;
  private final List<CellSums> leftOut;
  private final Set<String> atGates;
  private final Map<String, Set<String>> setUpsOfSession;
  private final Map<String, Set<String>> sessionsOfSetUp;
  private final List<SeasonCell> cells = new ArrayList<>();

  /**
   * @param sums of cells with shots that count
   * @param tune what an arrow's own effect on a bow holds for, by the cell's bow state
   * @param leftOut those that aren't among them, since no other session bears them out
   */
  SeasonCells(List<CellSums> sums, Function<CellSums, String> tune, List<CellSums> leftOut) {
    this.sums = sums;
    this.leftOut = List.copyOf(leftOut);
    atGates =
        sums.stream()
            .filter(cell -> !cell.atBow().isKnown())
            .map(cell -> cell.name().bow())
            .collect(Collectors.toCollection(HashSet::new));
    setUpsOfSession = together(cell -> cell.name().session(), cell -> cell.setUp().name());
    sessionsOfSetUp = together(cell -> cell.setUp().name(), cell -> cell.name().session());
    for (CellSums cell : sums) {
      cells.add(seasonCell(cell, tune.apply(cell)));
    }
  }

  private Map<String, Set<String>> together(
      Function<CellSums, String> of, Function<CellSums, String> what) {
    Map<String, Set<String>> all = new HashMap<>();
    sums.forEach(
        cell ->
            all.computeIfAbsent(of.apply(cell), k -> new LinkedHashSet<>()).add(what.apply(cell)));
    return all;
  }

  static String state(String bow, String state) {
    return bow + ", " + state;
  }

  List<SeasonCell> cells() {
    return cells;
  }

  List<CellSums> leftOut() {
    return leftOut;
  }

  /** Those that it takes, with speeds at the bow or at the gates as it takes them. */
  List<CellSums> sums() {
    return sums.stream().map(cell -> isAtBow(cell.name().bow()) ? cell : cell.atGates()).toList();
  }

  boolean isAtBow(String bow) {
    return !atGates.contains(bow);
  }

  private SeasonCell seasonCell(CellSums cell, String tune) {
    String bow = cell.name().bow();
    double air = isAtBow(bow) ? 0 : cell.atBow().share();
    return new SeasonCell(
        bow,
        state(bow, cell.name().state()),
        cell.name().arrow(),
        tune,
        cell.massKg(),
        SCALE_U_KG,
        cell.name().session(),
        isOwn(cell) ? cell.setUp().relativeU() : 0,
        cell.n(),
        cell.meanLog() - air,
        cell.squaresOfLogs());
  }

  /** Whether the cell's set-up served its session alone, and its session no other. */
  private boolean isOwn(CellSums cell) {
    return setUpsOfSession.get(cell.name().session()).size() == 1
        && sessionsOfSetUp.get(cell.setUp().name()).size() == 1;
  }

  /**
   * What one standard uncertainty of each error that cells share does to their log speeds: of each
   * set-up that isn't one session's own, and of the drag coefficient.
   */
  List<double[]> shared() {
    Map<String, double[]> bySetUp = new HashMap<>();
    double[] drag = new double[sums.size()];
    boolean isDrawn = false;
    for (int c = 0; c < drag.length; c++) {
      CellSums cell = sums.get(c);
      if (!isOwn(cell) && cell.setUp().relativeU() > 0) {
        bySetUp.computeIfAbsent(cell.setUp().name(), k -> new double[drag.length])[c] =
            cell.setUp().relativeU();
      }
      if (isAtBow(cell.name().bow())) {
        drag[c] = cell.atBow().relativeU();
        isDrawn = true;
      }
    }
    List<double[]> all = new ArrayList<>(bySetUp.values());
    if (isDrawn) {
      all.add(drag);
    }
    return all;
  }
}
