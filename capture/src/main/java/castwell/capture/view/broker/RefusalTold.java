package castwell.capture.view.broker;

import castwell.capture.view.Meaning;
import java.time.Instant;

/** Why a wish on the tags was refused. */
public record RefusalTold(
    @Meaning("where the gates stand") String station,
    @Meaning("when, UTC") Instant at,
    @Meaning("what is wrong, and what to do") String sentence) {}
