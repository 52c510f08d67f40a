package castwell.capture.store;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** What people decided of sessions' fronts and tails; the last word holds. */
public final class FrontsDecisions {
  private final Handle handle;

  FrontsDecisions(Handle handle) {
    this.handle = handle;
  }

  /** Whether the session's tails are corrected to its fronts, if a person decided that. */
  public Optional<Boolean> of(long sessionId) {
    return BareSql.first(
        handle,
        (row, context) -> row.getBoolean(1),
        "SELECT fronts_trusted FROM fronts_decision WHERE session_id = ? ORDER BY id DESC LIMIT 1",
        sessionId);
  }

  public void decide(long sessionId, boolean frontsTrusted, Instant at, String by) {
    BareSql.write(
        handle,
        "INSERT INTO fronts_decision (session_id, fronts_trusted, at_ms, decided_by) VALUES (?, ?, ?, ?)",
        sessionId,
        frontsTrusted,
        at,
        by);
  }
}
