package castwell.web.chart;

/**
 * How marks of one kind are told apart: each style has a colour with a shape and a dash of its own.
 */
public enum Style {
  FIRST,
  SECOND,
  THIRD,
  FOURTH,
  FIFTH,
  SIXTH,
  SEVENTH,
  /** A mark that doesn't count: a hollow cross. */
  ASIDE,
  /** What others are compared with: a plain line. */
  REFERENCE;

  private static final int OWN = SEVENTH.ordinal() + 1;

  /** Whether there are styles enough for so many series of one kind. */
  public static boolean isEnoughFor(int n) {
    return n <= OWN;
  }

  /** The style of the nth of several series of one kind; after the seventh they begin again. */
  public static Style of(int n) {
    return values()[n % OWN];
  }
}
