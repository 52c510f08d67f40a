package castwell.capture.publish.broker;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Telling;

/** Says why the broker can't be used now. */
public final class BrokerUnavailable extends Exception implements Telling {
  private static final long serialVersionUID = 1L;

  private final transient Phrase phrase;

  BrokerUnavailable(Phrase phrase) {
    super(phrase.written());
    this.phrase = phrase;
  }

  BrokerUnavailable(Phrase phrase, Throwable cause) {
    super(phrase.written(), cause);
    this.phrase = phrase;
  }

  @Override
  public Phrase phrase() {
    return phrase;
  }
}
