package castwell.capture.view.health;

import java.util.Locale;

/** How well something is, the worse the later. */
public enum Level {
  WELL,
  CANT_TELL,
  ATTENTION,
  BAD;

  public String word() {
    return this == CANT_TELL ? "can't tell" : name().toLowerCase(Locale.ROOT);
  }
}
