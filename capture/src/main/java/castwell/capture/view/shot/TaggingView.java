package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import java.time.Instant;
import java.util.Optional;

/** A shot's tags, as somebody once set them. */
public record TaggingView(
    Optional<String> bow,
    Optional<String> arrow,
    @Meaning("when, UTC") Instant at,
    @Meaning("who said it") String by,
    @Meaning("why, empty where nobody said") String why) {}
