package castwell.capture.store;

import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** The decisions that people took about shots. */
public final class Decisions {
  private final Handle handle;

  public enum Decided {
    SET_ASIDE,
    BROUGHT_BACK,
    /** A decision was taken back: the rules' verdict holds again. */
    AS_JUDGED
  }

  Decisions(Handle handle) {
    this.handle = handle;
  }

  public void decide(long passageId, Decided decided, String reason, Instant at, String by) {
    handle
        .createUpdate(
            """
            INSERT INTO decision (passage_id, decided, reason, at_ms, decided_by)
            VALUES (?, ?, ?, ?, ?)""")
        .bind(0, passageId)
        .bind(1, decided.name())
        .bind(2, reason)
        .bind(3, at)
        .bind(4, by)
        .execute();
  }

  /** All decisions about a shot, the first first. */
  public List<Shot.Decision> history(long passageId) {
    return handle
        .createQuery("SELECT * FROM decision WHERE passage_id = ? ORDER BY id")
        .bind(0, passageId)
        .map(
            (row, context) ->
                new Shot.Decision(
                    Decided.valueOf(row.getString("decided")),
                    row.getString("reason"),
                    Instant.ofEpochMilli(row.getLong("at_ms")),
                    row.getString("decided_by")))
        .list();
  }
}
