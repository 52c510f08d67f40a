package castwell.capture.view.broker;

/** Whether we are connected to the broker. */
public enum Presence {
  ONLINE,
  OFFLINE
}
