package castwell.capture.store;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Telling;

/** Tells why a data folder can't be used, and what to do about it. */
public final class StoreRefused extends RuntimeException implements Telling {
  private static final long serialVersionUID = 1L;

  private final transient Phrase phrase;

  /**
   * @param sentence is shown at the terminal only
   */
  public StoreRefused(String sentence) {
    this(sentence, null);
  }

  public StoreRefused(String sentence, Throwable cause) {
    super(sentence, cause);
    this.phrase = Phrase.asIs(sentence);
  }

  StoreRefused(StoreUnavailable trouble) {
    super(trouble);
    this.phrase = trouble.phrase();
  }

  @Override
  public Phrase phrase() {
    return phrase;
  }
}
