package castwell.analysis.cell;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;

/**
 * The gates as they were set up once. The error of a set-up is common to all its shots, as a share
 * of the speed.
 *
 * @param name the set-up's name, which is equal for shots that share its error
 * @param relativeU the standard uncertainty as a share of the speed, at least 0
 */
public record SetUp(String name, double relativeU) {

  /** A speed measured over this set-up, with the uncertainty that all its shots have in common. */
  public Quantity withCommon(Quantity speedMps) {
    return speedMps.plus(Quantity.of(0, Math.abs(speedMps.value()) * relativeU, source()));
  }

  public Source source() {
    return Source.common("set-up " + name);
  }
}
