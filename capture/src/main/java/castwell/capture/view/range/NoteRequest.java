package castwell.capture.view.range;

import castwell.capture.view.Request;
import java.util.Optional;

/** What to note of a session. */
public record NoteRequest(Optional<String> note) implements Request {}
