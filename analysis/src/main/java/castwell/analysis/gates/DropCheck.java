package castwell.analysis.gates;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;

/**
 * A check of the gates by a rod that falls through both, laid flat one below the other: how long it
 * takes from the first to the second. From rest, a point that falls by h has taken t = sqrt(2 h /
 * g), so its front, h above gate A and h + d above gate B, needs sqrt(2 (h + d) / g) - sqrt(2 h /
 * g). Air drag on a dense rod at these speeds is below one part in ten thousand and is left out (by
 * reasoning).
 *
 * @param expectedS the time that gravity gives, with the uncertainty of height, spacing, gravity
 *     and triggers
 * @param measuredS the time that the gates' ticks give
 */
public record DropCheck(Quantity expectedS, Quantity measuredS) {
  private static final double ALPHA = 0.05;

  /** What the comparison says. */
  public enum Outcome {
    AGREES,
    DIFFERS,
    /** Expected and measured are so uncertain that even a gross error would pass. */
    CANT_TELL
  }

  /** The coarsest check that is worth the name: it must see a relative error of one fiftieth. */
  private static final double COARSEST = 0.02;

  /**
   * @param dropM the distance from the rod's lower end to gate A, above 0
   * @param spacingM the distance from gate A to gate B, above 0
   * @param gravity the acceleration of free fall, in m/s2, above 0
   * @param triggerScatterM standard deviation of the place on the rod at which one gate triggers
   * @throws IllegalArgumentException when one of the first three isn't above 0
   */
  public static Quantity expectedS(
      Quantity dropM, Quantity spacingM, Quantity gravity, double triggerScatterM) {
    for (Quantity quantity : new Quantity[] {dropM, spacingM, gravity}) {
      if (!(quantity.value() > 0)) {
        throw new IllegalArgumentException("drop, spacing and gravity are above 0");
      }
    }
    Quantity toA = dropM.plus(trigger("A", triggerScatterM));
    Quantity toB = dropM.plus(spacingM).plus(trigger("B", triggerScatterM));
    return fallS(toB, gravity).minus(fallS(toA, gravity));
  }

  private static Quantity trigger(String gate, double scatterM) {
    return Quantity.of(0, scatterM, Source.own("trigger at gate " + gate));
  }

  private static Quantity fallS(Quantity heightM, Quantity gravity) {
    return heightM.times(2).dividedBy(gravity).squareRoot();
  }

  /**
   * The measured over the expected time, less 1; above 0 the gates stand farther apart than is
   * said.
   */
  public Quantity relativeError() {
    return measuredS.dividedBy(expectedS).minus(Quantity.exact(1));
  }

  public Outcome outcome() {
    Quantity error = relativeError();
    if (error.pValue() < ALPHA) {
      return Outcome.DIFFERS;
    }
    return error.expandedUncertainty(1 - ALPHA) > COARSEST ? Outcome.CANT_TELL : Outcome.AGREES;
  }
}
