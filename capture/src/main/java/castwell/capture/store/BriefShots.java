package castwell.capture.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * Tagged shots with only what the arithmetic needs. Very many are read at once, and this takes a
 * fraction of the time of {@link Shots}.
 */
public final class BriefShots {
  private static final String SELECT =
      """
      SELECT passage.id, shot_id, fired_ms, passage.station, session.name, passage.calibration_id, bow_id, arrow_id,
        coalesce(figure.speed_mps, reading.speed_mps), coalesce(figure.speed_u_own_mps, reading.speed_u_own_mps, 0),
        coalesce(figure.speed_u_common_mps, reading.speed_u_common_mps, 0),
        CASE decided WHEN 'SET_ASIDE' THEN 0 WHEN 'BROUGHT_BACK' THEN 1
          ELSE coalesce(clean, reading.speed_mps IS NOT NULL) END,
        coalesce(decided IN ('SET_ASIDE', 'BROUGHT_BACK'), 0), figure.air_density, gates_from_bow_m + spacing_m / 2
      FROM passage
      JOIN session ON session.id = passage.session_id
      JOIN shot_tag ON shot_tag.id = (SELECT max(id) FROM shot_tag WHERE passage_id = passage.id)
      LEFT JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
      LEFT JOIN calibration ON calibration.id = passage.calibration_id
      LEFT JOIN reading ON reading.passage_id = passage.id
      LEFT JOIN decision ON decision.id = (SELECT max(id) FROM decision WHERE passage_id = passage.id)
      WHERE part_of IS NULL AND bow_id IS NOT NULL AND arrow_id IS NOT NULL\s""";

  private static final String IN_ORDER = " ORDER BY fired_ms, passage.id";

  private final Handle handle;

  /**
   * A shot's speed, and what it was shot with.
   *
   * @param calibrationId of the gates that saw it; empty where its speed was entered by hand
   * @param speedMps empty where there is none
   * @param way empty where its speed was entered by hand
   */
  public record Brief(
      long passageId,
      String shotId,
      Instant fired,
      String station,
      String session,
      OptionalLong calibrationId,
      long bowId,
      long arrowId,
      OptionalDouble speedMps,
      double speedUOwnMps,
      double speedUCommonMps,
      boolean counts,
      boolean judgedByPerson,
      Optional<Way> way) {}

  /**
   * The way from the bow to where the speed was measured.
   *
   * @param airDensity in kg/m3
   */
  public record Way(double metres, double airDensity) {}

  BriefShots(Handle handle) {
    this.handle = handle;
  }

  /** A session's shots, the first first. */
  public List<Brief> ofSession(String session) {
    return query("AND session.name = ?" + IN_ORDER).bind(0, session).map(BriefShots::brief).list();
  }

  /** A bow's last shots of a session, the first first. */
  public List<Brief> ofSession(String session, long bowId, int most) {
    List<Brief> last =
        query("AND session.name = ? AND bow_id = ? ORDER BY fired_ms DESC, passage.id DESC LIMIT ?")
            .bind(0, session)
            .bind(1, bowId)
            .bind(2, most)
            .map(BriefShots::brief)
            .list();
    Collections.reverse(last);
    return last;
  }

  /** Hands on every shot, the first first, one by one. */
  public void each(Consumer<Brief> consumer) {
    try (var shots = query(IN_ORDER).map(BriefShots::brief).stream()) {
      shots.forEach(consumer);
    }
  }

  private Query query(String condition) {
    return handle.createQuery(SELECT + condition);
  }

  /** Columns are read by their place, because reading them by name takes twice as long. */
  private static Brief brief(ResultSet row, StatementContext context) throws SQLException {
    long calibration = row.getLong(6);
    OptionalLong byGates = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(calibration);
    double mps = row.getDouble(9);
    OptionalDouble speed = row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(mps);
    return new Brief(
        row.getLong(1),
        row.getString(2),
        Instant.ofEpochMilli(row.getLong(3)),
        row.getString(4),
        row.getString(5),
        byGates,
        row.getLong(7),
        row.getLong(8),
        speed,
        row.getDouble(10),
        row.getDouble(11),
        row.getBoolean(12),
        row.getBoolean(13),
        byGates.isPresent()
            ? Optional.of(new Way(row.getDouble(15), row.getDouble(14)))
            : Optional.empty());
  }
}
