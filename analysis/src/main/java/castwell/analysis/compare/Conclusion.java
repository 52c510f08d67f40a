package castwell.analysis.compare;

import castwell.analysis.uncertainty.Estimate;

/** What can be concluded of a change, by its 95 % interval and by nothing else. */
public enum Conclusion {
  FASTER,
  SLOWER,
  /** It may be none, and is small at the most. */
  NO_LARGER_CHANGE,
  CANT_TELL;

  /** What is called small: 1 % of the speed (common practice, no source). */
  private static final double SMALL = 0.01;

  /**
   * @param share of the speed before, with its 95 % interval
   */
  public static Conclusion of(Estimate share) {
    if (share.interval().low() > 0) {
      return FASTER;
    }
    if (share.interval().high() < 0) {
      return SLOWER;
    }
    return share.interval().largest() <= SMALL ? NO_LARGER_CHANGE : CANT_TELL;
  }
}
