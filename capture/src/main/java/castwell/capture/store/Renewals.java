package castwell.capture.store;

import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Up to which rules all figures were brought. */
public final class Renewals {
  private final Handle handle;

  /** What one board shot in one session. */
  public record Judged(long sessionId, long boardId) {}

  Renewals(Handle handle) {
    this.handle = handle;
  }

  public boolean areDone(int rulesVersion) {
    return BareSql.returning(handle, "SELECT coalesce(max(rules_version), 0) FROM renewal")
        >= rulesVersion;
  }

  public void note(int rulesVersion, int passages, Instant at) {
    BareSql.write(
        handle,
        "INSERT INTO renewal (rules_version, passages, at_ms) VALUES (?, ?, ?)",
        rulesVersion,
        passages,
        at);
  }

  /** The sessions and boards with figures in force that were judged by older rules. */
  public List<Judged> judgedBefore(int rulesVersion) {
    return BareSql.list(
        handle,
        (row, context) -> new Judged(row.getLong(1), row.getLong(2)),
        """
        SELECT DISTINCT session_id, board_id FROM passage
        JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
        WHERE rules_version < ? AND board_id IS NOT NULL AND part_of IS NULL ORDER BY session_id, board_id""",
        rulesVersion);
  }
}
