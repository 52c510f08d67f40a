package castwell.capture.view.health;

import castwell.capture.view.Meaning;
import java.util.List;

/** How a part of it all is. */
public record PartHealth(@Meaning("that of the worst item") Level level, List<ItemView> items) {}
