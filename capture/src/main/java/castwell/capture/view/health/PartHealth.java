package castwell.capture.view.health;

import castwell.capture.view.Meaning;
import java.util.List;

/** The health of one part. */
public record PartHealth(@Meaning("that of the worst item") Level level, List<ItemView> items) {}
