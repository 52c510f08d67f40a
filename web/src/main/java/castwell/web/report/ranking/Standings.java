package castwell.web.report.ranking;

import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.Cast;
import castwell.analysis.compare.Ranking;
import castwell.analysis.compare.Ranking.Entry;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.web.report.BowCells;
import castwell.web.report.ReportRequest;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Every bow as it is now, with its cast and what it can't be told apart from.
 *
 * @param bows in the order entered
 * @param ranking of those that have a cast
 */
public record Standings(List<Standing> bows, Ranking ranking) {

  /**
   * One bow as it is now.
   *
   * @param cells what it shot in this state
   * @param cast empty while too few shots or masses tell it
   */
  public record Standing(BowState state, String stateName, BowSums cells, Optional<Cast> cast) {
    /** How many shots of it count in this state. */
    public int n() {
      return cells.shots();
    }
  }

  public static Standings of(Transaction t, ZoneId zone, ReportRequest request) {
    BowCells bowCells = new BowCells(t, zone);
    List<Standing> bows = bowCells.now().stream().map(bow -> planState(bow, request)).toList();
    List<Entry> entries =
        bows.stream()
            .flatMap(
                bow -> bow.cast().map(c -> new Entry(bow.state().bow(), c.withScaleMps())).stream())
            .toList();
    return new Standings(bows, Ranking.of(entries));
  }

  private static Standing planState(BowCells.Now bow, ReportRequest request) {
    Optional<Cast> cast =
        bow.cells()
            .virtualMass()
            .map(model -> request.cast(model, bow.state()))
            .filter(c -> Double.isFinite(c.speedMps().standardUncertainty()));
    return new Standing(bow.state(), bow.stateName(), bow.cells(), cast);
  }

  List<Standing> ranked() {
    return bows.stream().filter(bow -> bow.cast().isPresent()).toList();
  }

  List<Standing> leftOut() {
    return bows.stream().filter(bow -> bow.cast().isEmpty()).toList();
  }

  public Optional<Standing> of(String bow) {
    return bows.stream().filter(planState -> planState.state().bow().equals(bow)).findFirst();
  }

  /** By bow: those that share a letter can't be told apart. */
  public Map<String, String> letters() {
    List<List<String>> groups = ranking.groups();
    Map<String, String> letters = new HashMap<>();
    for (int i = 0; i < groups.size(); i++) {
      String letter = i < 26 ? String.valueOf((char) ('a' + i)) : "g" + (i + 1);
      groups.get(i).forEach(bow -> letters.merge(bow, letter, (a, b) -> a + " " + b));
    }
    return letters;
  }
}
