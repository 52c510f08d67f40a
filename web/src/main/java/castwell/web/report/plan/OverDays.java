package castwell.web.report.plan;

import castwell.analysis.compare.SessionDesign;
import castwell.analysis.compare.SessionPower;
import castwell.analysis.season.Priors;
import castwell.analysis.season.VarianceGrid;
import castwell.capture.season.KnownSeason;
import java.util.Optional;

/**
 * What it takes to see a change where before and after lie on different days.
 *
 * @param change of the log speed
 * @param cheapest the fewest sessions with which the wanted chance can be had; empty where eight
 *     before and after won't do
 * @param asked what somebody asked the chance of
 * @param seasonSessions how many tell how days differ; below four that is mostly assumed
 */
record OverDays(
    SessionPower power,
    double change,
    Optional<SessionDesign> cheapest,
    Optional<SessionDesign> asked,
    int seasonSessions) {
  private static final int USUAL_SHOTS = 5;

  /**
   * @param arrows how many different ones
   * @param others how many bows could be shot along
   */
  static OverDays of(
      Wish wish, Size size, double sdMps, Optional<KnownSeason> season, int arrows, int others) {
    VarianceGrid grid =
        season
            .map(all -> all.season().grid())
            .orElseGet(() -> VarianceGrid.assumed(Priors.ASSUMED));
    double setUpU = season.map(KnownSeason::setUpU).orElse(0.0);
    SessionPower power = new SessionPower(grid, sdMps / size.speedMps(), setUpU, PlanDesign.ALPHA);
    Optional<SessionDesign> cheapest = power.cheapest(size.log(), wish.power(), arrows, others);
    return new OverDays(
        power,
        size.log(),
        cheapest,
        asked(wish, cheapest, arrows),
        season.map(all -> all.season().sessions()).orElse(0));
  }

  private static Optional<SessionDesign> asked(
      Wish wish, Optional<SessionDesign> cheapest, int arrows) {
    if (wish.sessions().isEmpty() && wish.shots().isEmpty()) {
      return Optional.empty();
    }
    int sessions = wish.sessions().orElse(1);
    int shots = wish.shots().orElse(cheapest.map(SessionDesign::shots).orElse(USUAL_SHOTS));
    int controls = wish.bows().size() - 1;
    return Optional.of(new SessionDesign(sessions, sessions, controls, arrows, shots));
  }

  double chance(SessionDesign design) {
    return power.of(design, change);
  }

  /** As a share of the speed, the half width of an interval that no number of shots gets under. */
  double floor(SessionDesign design) {
    return Math.expm1(power.floor(design));
  }

  /** Likewise, with the design's own shots. */
  double halfWidth(SessionDesign design) {
    return Math.expm1(power.halfWidth(design));
  }

  /** Whether more shots alone would do: with very many the chance is as it is wanted. */
  boolean isMadeByShots(SessionDesign design, double wanted) {
    return new SessionPower(power.grid(), 0, power.setUpU(), power.alpha()).of(design, change)
        >= wanted;
  }
}
