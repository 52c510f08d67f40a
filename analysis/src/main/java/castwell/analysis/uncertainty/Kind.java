package castwell.analysis.uncertainty;

/** Whose uncertainty it is. */
public enum Kind {
  /** Each shot's own: it averages out over many shots. */
  OWN,
  /**
   * Common to every shot of one set-up: it does not average out, and cancels between bows of one
   * session.
   */
  COMMON
}
