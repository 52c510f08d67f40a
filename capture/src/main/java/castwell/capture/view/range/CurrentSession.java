package castwell.capture.view.range;

import castwell.capture.view.Meaning;
import java.time.Instant;

/** The outing that is under way. */
public record CurrentSession(
    String name,
    @Meaning("when it began, UTC") Instant startedAt,
    @Meaning("how many passages it has") int shots,
    @Meaning("how many of them count") int counting) {}
