package castwell.capture.store;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Notes that people wrote about sessions. The last one stands, and the earlier ones are kept. */
public final class SessionNotes {
  private final Handle handle;

  SessionNotes(Handle handle) {
    this.handle = handle;
  }

  /**
   * Writes a note.
   *
   * @param note empty to take the last one back
   */
  public void write(long sessionId, String note, Instant at, String by) {
    handle
        .createUpdate(
            "INSERT INTO session_note (session_id, note, at_ms, said_by) VALUES (?, ?, ?, ?)")
        .bind(0, sessionId)
        .bind(1, note)
        .bind(2, at)
        .bind(3, by)
        .execute();
  }

  /** The note that stands; empty where there is none. */
  public Optional<String> of(long sessionId) {
    return handle
        .createQuery("SELECT note FROM session_note WHERE session_id = ? ORDER BY id DESC LIMIT 1")
        .bind(0, sessionId)
        .mapTo(String.class)
        .findOne()
        .filter(note -> !note.isEmpty());
  }
}
