package castwell.analysis.gates;

import castwell.analysis.shot.Gate;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.List;
import java.util.Optional;

/**
 * How much longer one gate sees arrows of known length than they are. Speeds that are wrong by a
 * share make lengths wrong by the same share.
 *
 * @param n the number of shots with a known length
 * @param excessM the mean of length seen less length known, in metres, uncertain by the shots'
 *     scatter alone
 */
public record LengthOverKnown(Gate gate, int n, Quantity excessM) {
  /**
   * @param triggerM the trigger scatter, above 0
   * @return empty without shots of known length
   */
  public static Optional<LengthOverKnown> of(List<GateShot> shots, Gate gate, double triggerM) {
    double[] excess =
        shots.stream()
            .flatMap(shot -> shot.known().stream().map(known -> shot.lengthM(gate) - known.m()))
            .mapToDouble(metres -> metres)
            .toArray();
    if (excess.length == 0) {
      return Optional.empty();
    }
    TrimmedMean mean =
        TrimmedMean.of(excess, Math.sqrt(2) * triggerM, FrontOverTail.BELIEVED_SHOTS);
    Quantity told =
        Quantity.of(mean.mean(), mean.standardError(), Source.own("length at gate " + gate));
    return Optional.of(new LengthOverKnown(gate, mean.n(), told));
  }
}
