package castwell.capture.view.range;

/** What a person noted of a session. */
public record NoteView(String note) {}
