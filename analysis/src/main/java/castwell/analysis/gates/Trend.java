package castwell.analysis.gates;

import castwell.analysis.statistic.ExtremeSpread;
import castwell.analysis.statistic.StraightLine;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.List;
import java.util.Optional;

/**
 * How front over tail wandered while the session went on, as where a gate sags, or where the sun
 * comes round to one gate alone: residual = start + slope time, by least squares, with single
 * spoilt shots pulled in first.
 *
 * @param n the number of shots
 * @param seconds from the first shot to the last
 * @param changeM the residual's change over that time, in metres
 */
public record Trend(int n, double seconds, Quantity changeM) {
  /** The share of sessions without a trend that are said to have one. */
  private static final double ALPHA = 0.001;

  /**
   * @param together the same shots' front over tail
   * @return empty with fewer than ten shots, or all of one instant
   */
  public static Optional<Trend> of(List<GateShot> shots, FrontOverTail together) {
    if (!together.isEnough()) {
      return Optional.empty();
    }
    double[] at = shots.stream().mapToDouble(GateShot::atS).toArray();
    double[] residuals =
        shots.stream().mapToDouble(shot -> together.pulledIn(shot.residualM())).toArray();
    return StraightLine.fit(at, residuals).map(line -> of(line, at));
  }

  private static Trend of(StraightLine line, double[] at) {
    double seconds = ExtremeSpread.of(at);
    Source source = new Source("trend of front over tail", Kind.OWN, line.degreesOfFreedom());
    return new Trend(
        at.length, seconds, Quantity.of(line.slope() * seconds, line.slopeSe() * seconds, source));
  }

  /** Whether it changed by more than chance and by enough to matter. */
  public boolean named(double spacingM) {
    return changeM.pValue() < ALPHA && Math.abs(changeM.value()) > FrontOverTail.WORTH * spacingM;
  }
}
