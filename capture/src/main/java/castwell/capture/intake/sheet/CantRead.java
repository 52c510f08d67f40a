package castwell.capture.intake.sheet;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Telling;

/** Says what is wrong with one line. */
public final class CantRead extends RuntimeException implements Telling {
  private static final long serialVersionUID = 1L;

  private final transient Phrase phrase;

  public CantRead(String key, Object... values) {
    super(key, null, false, false);
    this.phrase = Phrase.of(key, values);
  }

  @Override
  public Phrase phrase() {
    return phrase;
  }
}
