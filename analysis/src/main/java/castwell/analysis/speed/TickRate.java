package castwell.analysis.speed;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;

/**
 * How fast the board's counter runs. Its error is common to every shot of one set-up.
 *
 * @param hz ticks per second, above 0
 * @param relativeU relative standard uncertainty, at least 0
 */
public record TickRate(double hz, double relativeU) {
  private static final Source SOURCE = Source.common("tick rate");

  /**
   * @throws IllegalArgumentException when a value is out of its range
   */
  public TickRate {
    if (!(hz > 0 && Double.isFinite(hz))) {
      throw new IllegalArgumentException("a tick rate lies above 0 Hz, not at " + hz);
    }
    if (!(relativeU >= 0 && Double.isFinite(relativeU))) {
      throw new IllegalArgumentException(
          "a tick rate's relative uncertainty is at least 0, not " + relativeU);
    }
  }

  /**
   * The rate that the board states, before any measurement: the oscillator's bounds are
   * rectangular, so u = a / sqrt 3 (JCGM 100:2008, 4.3.7).
   */
  public static TickRate nominal(double hz, Oscillator oscillator) {
    return new TickRate(hz, oscillator.halfWidth() / Math.sqrt(3));
  }

  /** The rate in Hz as a quantity, uncertain by the common source "tick rate". */
  public Quantity quantity() {
    return Quantity.of(hz, hz * relativeU, SOURCE);
  }
}
