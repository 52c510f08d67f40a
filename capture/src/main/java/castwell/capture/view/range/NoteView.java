package castwell.capture.view.range;

/** A person's note on a session. */
public record NoteView(String note) {}
