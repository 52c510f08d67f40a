package castwell.capture.view.broker;

/** The part of earlier news that no longer holds. */
public enum Changed {
  SHOTS,
  RACK,
  JOINED
}
