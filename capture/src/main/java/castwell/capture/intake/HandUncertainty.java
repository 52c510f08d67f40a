package castwell.capture.intake;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;

/**
 * How sure a speed is that somebody read off a display: its standard uncertainty where the sheet
 * doesn't tell it.
 *
 * @param ownMps from shot to shot, at least 0
 * @param commonShare of the speed, the same for all shots of a set-up, at least 0
 */
public record HandUncertainty(double ownMps, double commonShare) {

  /**
   * Whole feet per second leave a rectangle one wide, so 1/sqrt(12) of it (JCGM 100:2008, F.2.2.1);
   * half a per cent in common is common practice, no source.
   */
  public static final HandUncertainty USUAL =
      new HandUncertainty(METRES_PER_FOOT / Math.sqrt(12), 0.005);

  public HandUncertainty {
    if (!(ownMps >= 0 && ownMps < 100 && commonShare >= 0 && commonShare < 1)) {
      throw new IllegalArgumentException(
          "an uncertainty is at least 0, and its common part less than the whole speed");
    }
  }
}
