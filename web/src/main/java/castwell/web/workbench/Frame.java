package castwell.web.workbench;

import castwell.web.text.Speech;
import castwell.web.unit.UnitSystem;

/**
 * What stands around every page.
 *
 * @param room the one that the page belongs to
 * @param title of the page
 * @param event the last one that the page's figures are of
 * @param mayChange whether whoever looks may change things
 * @param rehearsal whether the range is pretended
 */
public record Frame(
    Room room,
    String title,
    long event,
    boolean mayChange,
    boolean rehearsal,
    String version,
    Speech speech) {

  public String say(String key, Object... arguments) {
    return speech.say(key, arguments);
  }

  public boolean isTrade() {
    return speech.units() == UnitSystem.TRADE;
  }
}
