package castwell.analysis.uncertainty;

/** The kind of an uncertainty: whether shots share its error. */
public enum Kind {
  /** Each shot has an error of its own, so the uncertainty averages out over many shots. */
  OWN,
  /**
   * All shots of one set-up share the error, so the uncertainty doesn't average out, but it cancels
   * between bows of one session.
   */
  COMMON
}
