package castwell.analysis.season;

/**
 * The shots that count of one bow state with one arrow in one session.
 *
 * @param state its name, which no other bow has one of
 * @param tune what the arrow's own effect on this bow holds for: the bow's name, or another once
 *     string, nock or arrow pass was changed
 * @param massKg the arrow's, the same in all cells of a season
 * @param massUKg standard uncertainty of the weighed mass, the same error for all bows; 0 where it
 *     is taken as exact
 * @param setUpU relative standard uncertainty that the session's set-up of the gates has for
 *     itself, the same in all its cells
 * @param shots how many, at least 1
 * @param meanLog mean of the natural logs of the speeds at the bow in m/s
 * @param squares sum of the squares of those logs about their mean
 */
public record SeasonCell(
    String bow,
    String state,
    String arrow,
    String tune,
    double massKg,
    double massUKg,
    String session,
    double setUpU,
    int shots,
    double meanLog,
    double squares) {

  public SeasonCell {
    if (shots < 1 || !(massKg > 0) || !(massUKg >= 0) || !(setUpU >= 0) || !(squares >= 0)) {
      throw new IllegalArgumentException("no cell of a season: " + arrow + " of " + state);
    }
    if (!Double.isFinite(meanLog)) {
      throw new IllegalArgumentException("a mean log speed is finite, not " + meanLog);
    }
  }

  /** The same cell of a bow state by another name. */
  public SeasonCell inState(String other) {
    return new SeasonCell(
        bow, other, arrow, tune, massKg, massUKg, session, setUpU, shots, meanLog, squares);
  }
}
