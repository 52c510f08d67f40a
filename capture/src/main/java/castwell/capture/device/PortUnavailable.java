package castwell.capture.device;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Telling;

/** Why a port can't be opened now. */
public final class PortUnavailable extends Exception implements Telling {
  private static final long serialVersionUID = 1L;

  private final transient Phrase phrase;

  public PortUnavailable(Phrase phrase) {
    super(phrase.written());
    this.phrase = phrase;
  }

  static PortUnavailable of(String key, Object... values) {
    return new PortUnavailable(Phrase.of(key, values));
  }

  @Override
  public Phrase phrase() {
    return phrase;
  }
}
