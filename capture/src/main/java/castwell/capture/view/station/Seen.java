package castwell.capture.view.station;

/** What a gate sees. */
public enum Seen {
  BLOCKED,
  CLEAR;

  public static Seen of(boolean blocked) {
    return blocked ? BLOCKED : CLEAR;
  }
}
