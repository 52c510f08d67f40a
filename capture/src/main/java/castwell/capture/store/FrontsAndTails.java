package castwell.capture.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** What front and tail of each shot that counts said, as far as that tells of the gates. */
public final class FrontsAndTails {
  private static final String SELECT =
      """
      SELECT fired_ms, passage.calibration_id, speed_mps, front_mps, tail_mps, figure.length_m,
        arrow.name, arrow_entry.length_m
      FROM passage
      JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
      LEFT JOIN shot_tag ON shot_tag.id = (SELECT max(id) FROM shot_tag WHERE passage_id = passage.id)
      LEFT JOIN arrow ON arrow.id = shot_tag.arrow_id
      LEFT JOIN arrow_entry ON arrow_entry.id = (SELECT max(id) FROM arrow_entry WHERE arrow_id = shot_tag.arrow_id)
      LEFT JOIN decision ON decision.id = (SELECT max(id) FROM decision WHERE passage_id = passage.id)
      WHERE session_id = ? AND part_of IS NULL AND front_mps > 0 AND tail_mps > 0 AND figure.length_m IS NOT NULL
        AND CASE decided WHEN 'SET_ASIDE' THEN 0 WHEN 'BROUGHT_BACK' THEN 1 ELSE clean END
      ORDER BY fired_ms, passage.id""";

  private final Handle handle;

  /**
   * One shot's.
   *
   * @param lengthM its length as both gates saw it
   * @param arrow the tagged arrow's name
   * @param arrowLengthM its length as somebody measured it
   */
  public record FrontAndTail(
      Instant fired,
      long calibrationId,
      double speedMps,
      double frontMps,
      double tailMps,
      double lengthM,
      Optional<String> arrow,
      OptionalDouble arrowLengthM) {}

  FrontsAndTails(Handle handle) {
    this.handle = handle;
  }

  /** Those of a session's shots that count and have four edges, the first first. */
  public List<FrontAndTail> ofSession(long sessionId) {
    return BareSql.list(handle, FrontsAndTails::row, SELECT, sessionId);
  }

  private static FrontAndTail row(ResultSet row, StatementContext none) throws SQLException {
    double length = row.getDouble(8);
    OptionalDouble known = row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(length);
    return new FrontAndTail(
        Instant.ofEpochMilli(row.getLong(1)),
        row.getLong(2),
        row.getDouble(3),
        row.getDouble(4),
        row.getDouble(5),
        row.getDouble(6),
        Optional.ofNullable(row.getString(7)),
        known);
  }
}
