package castwell.web.report.ranking;

import castwell.analysis.bow.BowSums;
import castwell.analysis.compare.CastRanking;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.web.report.AnyDay;
import castwell.web.report.BowCells;
import castwell.web.report.CastFigures;
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
public record Standings(List<Standing> bows, CastRanking ranking) {

  /**
   * One bow as it is now.
   *
   * @param cells what it shot in this state
   * @param anyDay what it does on any day; empty while no shot counts
   * @param cast likewise
   */
  public record Standing(
      BowState state,
      String stateName,
      BowSums cells,
      Optional<AnyDay> anyDay,
      Optional<CastFigures> cast) {
    /** How many shots of it count in this state. */
    public int n() {
      return cells.shots();
    }
  }

  public static Standings of(Transaction t, ZoneId zone, ReportRequest request) {
    BowCells bowCells = new BowCells(t, zone);
    List<Standing> bows = bowCells.now().stream().map(bow -> standing(bow, request)).toList();
    List<CastRanking.Bow> ranked =
        bows.stream().flatMap(bow -> toRank(bow, request).stream()).toList();
    return new Standings(bows, CastRanking.of(ranked, request.gpp()));
  }

  private static Standing standing(BowCells.Now bow, ReportRequest request) {
    return new Standing(
        bow.state(),
        bow.stateName(),
        bow.cells(),
        bow.anyDay(),
        bow.anyDay().map(known -> known.cast(request)));
  }

  private static Optional<CastRanking.Bow> toRank(Standing bow, ReportRequest request) {
    return bow.anyDay()
        .map(
            known ->
                new CastRanking.Bow(
                    bow.state().bow(),
                    known.curve(),
                    bow.state().drawWeightN(),
                    request.scaleUN()));
  }

  List<Standing> ranked() {
    return bows.stream().filter(bow -> bow.cast().isPresent()).toList();
  }

  List<Standing> leftOut() {
    return bows.stream().filter(bow -> bow.cast().isEmpty()).toList();
  }

  public Optional<Standing> of(String bow) {
    return bows.stream().filter(standing -> standing.state().bow().equals(bow)).findFirst();
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
