package castwell.web.workbench;

import java.util.Locale;

/** The entries of the menu, in its order. */
public enum MenuEntry {
  RANGE("/"),
  RACK("/rack"),
  ARROWS("/arrows"),
  SESSIONS("/sessions"),
  REWORK("/rework"),
  REACH("/reach"),
  PLAN("/plan"),
  GATES("/gates.html"),
  DATA("/data");

  private final String path;

  MenuEntry(String path) {
    this.path = path;
  }

  public String path() {
    return path;
  }

  /** The key of its name among the texts. */
  public String key() {
    return "menu." + name().toLowerCase(Locale.ROOT);
  }
}
