package castwell.capture.store;

/** Why a data folder can't be used, as one sentence that says what to do. */
public final class StoreRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public StoreRefused(String sentence) {
    super(sentence);
  }

  public StoreRefused(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
