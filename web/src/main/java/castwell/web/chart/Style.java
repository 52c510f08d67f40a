package castwell.web.chart;

/** How marks of one kind are told apart: a colour with a shape and a dash of its own. */
public enum Style {
  FIRST,
  SECOND,
  THIRD,
  FOURTH,
  FIFTH,
  SIXTH,
  SEVENTH,
  /** What doesn't count: a hollow cross. */
  ASIDE,
  /** What others are compared with: a plain line. */
  REFERENCE;

  private static final int OWN = SEVENTH.ordinal() + 1;

  /** Whether so many alike can each have a style of their own. */
  public static boolean isEnoughFor(int n) {
    return n <= OWN;
  }

  /** The style of the nth of several alike, beginning anew after the seventh. */
  public static Style of(int n) {
    return values()[n % OWN];
  }
}
