package castwell.capture.view.broker;

/** What of earlier things changed. */
public enum Changed {
  SHOTS,
  RACK,
  JOINED
}
