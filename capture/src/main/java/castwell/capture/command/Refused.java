package castwell.capture.command;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Telling;

/** Says in one sentence why something that a person asked for isn't done. */
public final class Refused extends RuntimeException implements Telling {
  private static final long serialVersionUID = 1L;

  public enum Why {
    /** The thing that was named doesn't exist. */
    NOT_FOUND,
    /** A value is impossible. */
    INVALID,
    /** The thing exists already, or has changed meanwhile. */
    CONFLICT
  }

  private final Why why;
  private final transient Phrase phrase;

  private Refused(Why why, Phrase phrase) {
    super(phrase.written());
    this.why = why;
    this.phrase = phrase;
  }

  public static Refused of(Why why, String key, Object... values) {
    return new Refused(why, Phrase.of(key, values));
  }

  @Override
  public Phrase phrase() {
    return phrase;
  }

  public Why why() {
    return why;
  }
}
