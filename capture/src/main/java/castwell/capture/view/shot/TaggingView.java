package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import java.time.Instant;
import java.util.Optional;

/** What somebody said once of who shot what. */
public record TaggingView(
    Optional<String> bow,
    Optional<String> arrow,
    @Meaning("when, UTC") Instant at,
    @Meaning("who said it") String by,
    @Meaning("why, empty where nobody said") String why) {}
