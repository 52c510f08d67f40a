package castwell.capture.intake;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;

/**
 * The standard uncertainty of a speed that somebody read off a display, for sheets that don't give
 * it.
 *
 * @param ownMps from shot to shot, at least 0
 * @param commonShare relative to the speed and the same for all shots of a set-up, at least 0
 */
public record HandUncertainty(double ownMps, double commonShare) {

  /**
   * Speeds in whole feet per second lie within a rectangle one wide, so their uncertainty is
   * 1/sqrt(12) of it (JCGM 100:2008, F.2.2.1); half a per cent in common is common practice, no
   * source.
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
