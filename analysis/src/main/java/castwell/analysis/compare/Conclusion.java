package castwell.analysis.compare;

import castwell.analysis.uncertainty.Quantity;

/** What can be concluded of a change, at a level of 5 %. */
public enum Conclusion {
  FASTER("faster"),
  SLOWER("slower"),
  CANT_TELL("can't tell");

  private static final double ALPHA = 0.05;

  private final String words;

  Conclusion(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /**
   * @param change the change with all its uncertainty, including what its set-ups don't share
   */
  public static Conclusion of(Quantity change) {
    if (!(change.pValue() < ALPHA)) {
      return CANT_TELL;
    }
    return change.value() > 0 ? FASTER : SLOWER;
  }
}
