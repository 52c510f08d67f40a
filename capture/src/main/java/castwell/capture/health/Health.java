package castwell.capture.health;

import castwell.capture.view.health.Level;
import java.util.Comparator;
import java.util.List;

/** The health of a station, or of the computer. */
public record Health(List<Item> items) {

  /** The level of the worst item. */
  public Level level() {
    return items.stream().map(Item::level).max(Comparator.naturalOrder()).orElse(Level.CANT_TELL);
  }
}
