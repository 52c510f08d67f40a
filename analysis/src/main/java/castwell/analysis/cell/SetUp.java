package castwell.analysis.cell;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;

/**
 * One standing of the gates. Its error is common to every shot over it, as a share of the speed.
 *
 * @param name equal for shots whose error is the same one
 * @param relativeU standard uncertainty over the speed, at least 0
 */
public record SetUp(String name, double relativeU) {

  /** A speed over this set-up, with the share of the error that all its shots have in common. */
  public Quantity withCommon(Quantity speedMps) {
    return speedMps.plus(Quantity.of(0, Math.abs(speedMps.value()) * relativeU, source()));
  }

  public Source source() {
    return Source.common("set-up " + name);
  }
}
