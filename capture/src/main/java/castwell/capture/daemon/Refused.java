package castwell.capture.daemon;

/** Why something that a person asked for isn't done, as one sentence. */
public final class Refused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public enum Why {
    /** What was named doesn't exist. */
    NOT_FOUND,
    /** A value can't be. */
    INVALID,
    /** It exists already. */
    CONFLICT
  }

  private final Why why;

  public Refused(Why why, String sentence) {
    super(sentence);
    this.why = why;
  }

  public Why why() {
    return why;
  }
}
