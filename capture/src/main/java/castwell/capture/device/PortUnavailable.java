package castwell.capture.device;

/** Why a port can't be opened now, as one sentence for a person. */
public final class PortUnavailable extends Exception {
  private static final long serialVersionUID = 1L;

  public PortUnavailable(String sentence) {
    super(sentence);
  }
}
