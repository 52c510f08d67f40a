package castwell.web.cli;

/** Bad input at the command line, told in one sentence. */
final class SaidPlainly extends RuntimeException {
  private static final long serialVersionUID = 1L;

  SaidPlainly(String sentence) {
    super(sentence);
  }
}
