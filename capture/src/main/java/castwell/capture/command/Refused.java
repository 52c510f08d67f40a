package castwell.capture.command;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Telling;

/** Why something that a person asked for isn't done, to be told in one sentence. */
public final class Refused extends RuntimeException implements Telling {
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
