package castwell.analysis.gates;

import castwell.analysis.shot.Gate;
import castwell.analysis.speed.Stamps;
import java.util.Optional;

/**
 * What one counted shot with four edges tells of the gates.
 *
 * <p>The time between the tails less that between the fronts is also the time for which gate B
 * stayed blocked less that for which A did: one number, of which no statistic can say whether the
 * tails were slowed or B saw more of the arrow than A.
 *
 * @param atS when it was shot, in seconds from an instant that all shots of the session share
 * @param speedMps its speed
 * @param lengthAM that speed times the time for which gate A stayed blocked, in metres
 * @param lengthBM that speed times the time for which gate B stayed blocked, in metres
 * @param known the length of the arrow that it is tagged as; empty where nobody measured it
 */
public record GateShot(
    double atS, double speedMps, double lengthAM, double lengthBM, Optional<KnownLength> known) {

  /** The shot of these stamps; empty unless each gate saw both its ends. */
  public static Optional<GateShot> of(
      double atS, double speedMps, Stamps stamps, Optional<KnownLength> known) {
    return stamps
        .blocked(Gate.A)
        .flatMap(
            a ->
                stamps
                    .blocked(Gate.B)
                    .map(
                        b ->
                            new GateShot(
                                atS, speedMps, speedMps * a.value(), speedMps * b.value(), known)));
  }

  /**
   * The front over the tail: speed times the time between the fronts less that between the tails,
   * in metres; below 0 where the tails came late, or B saw more of the arrow than A.
   */
  public double residualM() {
    return lengthAM - lengthBM;
  }

  /** The arrow's length as one gate saw it, in metres. */
  public double lengthM(Gate gate) {
    return gate == Gate.A ? lengthAM : lengthBM;
  }

  /** The arrow's length as both gates saw it, in metres. */
  public double lengthM() {
    return (lengthAM + lengthBM) / 2;
  }
}
