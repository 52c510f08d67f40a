package castwell.web.workbench;

import castwell.web.text.Speech;
import castwell.web.unit.UnitSystem;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/**
 * What stands around every page.
 *
 * @param menuEntry the entry that the page belongs to
 * @param event the last item of the feed that the page's figures include
 * @param mayChange whether whoever looks may change things
 * @param rehearsal whether the range is pretended
 */
public record Frame(
    MenuEntry menuEntry,
    String title,
    long event,
    boolean mayChange,
    boolean rehearsal,
    String version,
    Speech speech) {

  public String say(String key, Object... arguments) {
    return speech.say(key, arguments);
  }

  /** A name, encoded as a part of an address. */
  public String part(String name) {
    return URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
  }

  public boolean isTrade() {
    return speech.units() == UnitSystem.TRADE;
  }
}
