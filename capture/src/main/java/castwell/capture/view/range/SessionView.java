package castwell.capture.view.range;

import castwell.capture.view.Meaning;
import java.time.Instant;

/** An outing. */
public record SessionView(
    @Meaning("where the gates stand") String station,
    String name,
    @Meaning("when it began, UTC") Instant startedAt) {}
