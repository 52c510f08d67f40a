package castwell.capture.view.plan;

/** What became of a turn. */
public enum Became {
  SHOT,
  SKIPPED
}
