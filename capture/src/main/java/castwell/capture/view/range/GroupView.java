package castwell.capture.view.range;

import castwell.capture.view.Meaning;
import java.util.Optional;
import java.util.OptionalDouble;

/** The shots of one end with one bow and one arrow. */
public record GroupView(
    Optional<String> bow,
    Optional<String> arrow,
    @Meaning("how many count") int n,
    @Meaning("how many don't") int setAside,
    @Meaning(value = "mean of those that count", unit = "foot per second") OptionalDouble meanFps,
    @Meaning(value = "their standard deviation", unit = "foot per second") OptionalDouble sdFps) {}
