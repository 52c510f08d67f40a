package castwell.capture.publish.broker;

/** A text that no log or message may contain. */
public record Secret(String text) {
  @Override
  public String toString() {
    return "(secret)";
  }
}
