package castwell.capture.publish;

/** Why a broker can't be spoken to now, as one sentence. */
public final class BrokerUnavailable extends Exception {
  private static final long serialVersionUID = 1L;

  BrokerUnavailable(String sentence) {
    super(sentence);
  }

  BrokerUnavailable(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
