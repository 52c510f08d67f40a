package castwell.web.http.guard;

/** Why the page can't be served, as one sentence. */
public final class CannotServe extends RuntimeException {
  private static final long serialVersionUID = 1L;

  CannotServe(String sentence) {
    super(sentence);
  }

  public CannotServe(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
