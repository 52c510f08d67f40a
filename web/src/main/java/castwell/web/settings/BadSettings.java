package castwell.web.settings;

/** What is wrong with the settings file, as one sentence. */
public final class BadSettings extends RuntimeException {
  private static final long serialVersionUID = 1L;

  BadSettings(String sentence) {
    super(sentence);
  }
}
