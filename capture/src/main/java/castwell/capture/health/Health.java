package castwell.capture.health;

import castwell.capture.view.health.Level;
import java.util.Comparator;
import java.util.List;

/** How a station, or the computer, is. */
public record Health(List<Item> items) {

  /** That of the worst item. */
  public Level level() {
    return items.stream().map(Item::level).max(Comparator.naturalOrder()).orElse(Level.CANT_TELL);
  }
}
