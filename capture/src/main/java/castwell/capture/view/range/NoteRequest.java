package castwell.capture.view.range;

import castwell.capture.view.Request;
import java.util.Optional;

/** A note to write on a session. */
public record NoteRequest(Optional<String> note) implements Request {}
