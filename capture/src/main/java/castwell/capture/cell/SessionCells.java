package castwell.capture.cell;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellShot;
import castwell.analysis.outlier.StrayChances;
import castwell.analysis.wording.Phrase;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A session's cells and the strays among their shots, each bow's found by its own spread.
 *
 * @param all every cell of the session, of all its bows, as judged by rule and by person
 * @param strays the shots set aside, and those that are only doubted
 */
public record SessionCells(String session, List<Cell> all, List<Stray> strays) {
  /** Surer than this nothing is said to be: what strays are like is assumed. */
  private static final double MOST_TOLD = 0.99;

  /**
   * A shot that may not belong to its cell.
   *
   * @param cell the index of its cell among all
   * @param chance how likely it is a stray, from 0 to 1
   */
  public record Stray(int cell, CellShot shot, double chance) {

    /** Whether it is set aside; otherwise it is doubted, and counts. */
    public boolean isSetAside() {
      return chance > StrayChances.SET_ASIDE;
    }

    /** How sure that is, in words. */
    public Phrase sure() {
      return chance > MOST_TOLD
          ? Phrase.of("report.strays.very_sure")
          : Phrase.of("report.strays.sure", Math.round(100 * chance));
    }
  }

  static SessionCells of(String session, List<Cell> cells) {
    Map<String, List<Integer>> byBow = new LinkedHashMap<>();
    for (int c = 0; c < cells.size(); c++) {
      byBow.computeIfAbsent(cells.get(c).name().bow(), bow -> new ArrayList<>()).add(c);
    }
    Map<Integer, double[]> chances = new HashMap<>();
    for (List<Integer> ofBow : byBow.values()) {
      List<double[]> found = chances(ofBow.stream().map(cells::get).toList());
      for (int i = 0; i < ofBow.size(); i++) {
        chances.put(ofBow.get(i), found.get(i));
      }
    }
    return new SessionCells(session, List.copyOf(cells), strays(cells, chances));
  }

  /** The chances of one bow's shots. They scatter at least by what the gates add. */
  private static List<double[]> chances(List<Cell> ofBow) {
    List<boolean[]> kept = new ArrayList<>();
    List<double[]> logs = new ArrayList<>();
    for (Cell cell : ofBow) {
      boolean[] keptShots = new boolean[cell.shots().size()];
      IntStream.range(0, keptShots.length).forEach(i -> keptShots[i] = cell.shots().get(i).kept());
      kept.add(keptShots);
      logs.add(cell.shots().stream().mapToDouble(shot -> Math.log(shot.speedMps())).toArray());
    }
    double meanSquare =
        ofBow.stream()
            .flatMap(cell -> cell.shots().stream())
            .mapToDouble(shot -> Math.pow(shot.gatesUMps() / shot.speedMps(), 2))
            .average()
            .orElse(0);
    return StrayChances.of(logs, kept, Math.sqrt(meanSquare));
  }

  private static List<Stray> strays(List<Cell> cells, Map<Integer, double[]> chances) {
    List<Stray> strays = new ArrayList<>();
    for (int c = 0; c < cells.size(); c++) {
      for (int i = 0; i < chances.get(c).length; i++) {
        double chance = chances.get(c)[i];
        if (chance >= StrayChances.DOUBTED) {
          strays.add(new Stray(c, cells.get(c).shots().get(i), chance));
        }
      }
    }
    return List.copyOf(strays);
  }

  /** The cells without the shots that are set aside. */
  public List<Cell> cells() {
    List<Cell> cells = new ArrayList<>(all);
    strays.stream()
        .filter(Stray::isSetAside)
        .forEach(
            stray ->
                cells.set(
                    stray.cell(),
                    cells
                        .get(stray.cell())
                        .without(
                            Set.of(stray.shot().id()),
                            Phrase.of("report.strays.reason", stray.sure()))));
    return cells;
  }
}
