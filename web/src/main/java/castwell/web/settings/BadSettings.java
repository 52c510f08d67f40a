package castwell.web.settings;

/** Says in one sentence what is wrong with the settings file. */
public final class BadSettings extends RuntimeException {
  private static final long serialVersionUID = 1L;

  BadSettings(String sentence) {
    super(sentence);
  }
}
