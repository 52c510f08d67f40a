package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import java.util.Optional;

/** A speed read off another display. */
public record ReadingRequest(
    @Meaning(value = "as read", unit = "foot per second") double speedFps, Optional<String> note)
    implements Request {}
