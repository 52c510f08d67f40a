package castwell.capture.intake;

/** What is wrong with one line, as a sentence. */
final class CantRead extends RuntimeException {
  private static final long serialVersionUID = 1L;

  CantRead(String sentence, Object... values) {
    super(sentence.formatted(values), null, false, false);
  }
}
