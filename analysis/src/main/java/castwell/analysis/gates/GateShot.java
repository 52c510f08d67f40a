package castwell.analysis.gates;

import castwell.analysis.shot.Gate;
import java.util.Optional;

/**
 * What one counted shot with four edges tells of the gates.
 *
 * <p>The time between the tails less that between the fronts is also the time for which gate B
 * stayed blocked less that for which A did: one number, of which no statistic can say whether the
 * tails were slowed or B saw more of the arrow than A.
 *
 * @param atS when it was shot, in seconds from an instant that all shots of the session share
 * @param lengthM speed times the time for which a gate stayed blocked, the mean of both gates, in
 *     metres
 * @param residualM front over tail: speed times the time between the fronts less that between the
 *     tails, in metres; below 0 where the tails came late, or B saw more of the arrow than A
 * @param known the length of the arrow that it is tagged as; empty where nobody measured it
 */
public record GateShot(double atS, double lengthM, double residualM, Optional<KnownLength> known) {

  /**
   * Front over tail, in metres, from the speeds that front and tail gave over one spacing.
   *
   * @param speedMps the speed taken for the shot's
   */
  public static double residualM(
      double spacingM, double speedMps, double frontMps, double tailMps) {
    return speedMps * (spacingM / frontMps - spacingM / tailMps);
  }

  /** The arrow's length as one gate saw it, in metres. */
  public double lengthM(Gate gate) {
    return gate == Gate.A ? lengthM + residualM / 2 : lengthM - residualM / 2;
  }
}
