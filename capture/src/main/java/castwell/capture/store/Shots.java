package castwell.capture.store;

import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.StatementContext;

/** Passages with everything that is known of them, as people and exports see them. */
public final class Shots {
  private static final String SELECT =
      """
      SELECT passage.id, passage.shot_id, passage.boot, passage.first_edge, passage.last_edge, passage.station,
        passage.fired_ms, passage.end_number, board.device, session.name AS session_name,
        calibration.gates_from_bow_m + calibration.spacing_m / 2 AS middle_from_bow_m, %s,
        bow.name AS bow_name, bow_state.bow_id, bow_state.since_ms, bow_state.draw_weight_n, bow_state.draw_length_m,
        bow_state.done, %s, arrow.id AS arrow_id, arrow.name AS arrow_name, arrow_entry.mass_kg, %s,
        reading.passage_id IS NOT NULL AS by_hand, reading.speed_mps AS read_mps,
        reading.speed_u_own_mps AS read_u_own_mps, reading.speed_u_common_mps AS read_u_common_mps, reading.note,
        reading.source, decided, decision.reason AS decision_reason, decision.at_ms AS decision_ms, decided_by, figure.*
      FROM passage
      JOIN session ON session.id = passage.session_id
      LEFT JOIN board ON board.id = passage.board_id
      LEFT JOIN calibration ON calibration.id = passage.calibration_id
      LEFT JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
      LEFT JOIN reading ON reading.passage_id = passage.id
      LEFT JOIN shot_tag ON shot_tag.id = (SELECT max(id) FROM shot_tag WHERE passage_id = passage.id)
      LEFT JOIN bow ON bow.id = shot_tag.bow_id
      LEFT JOIN bow_state ON bow_state.id = coalesce(
        (SELECT id FROM bow_state WHERE bow_id = shot_tag.bow_id AND since_ms <= passage.fired_ms
          ORDER BY since_ms DESC, id DESC LIMIT 1),
        (SELECT id FROM bow_state WHERE bow_id = shot_tag.bow_id ORDER BY since_ms, id DESC LIMIT 1))
      LEFT JOIN arrow ON arrow.id = shot_tag.arrow_id
      LEFT JOIN arrow_entry ON arrow_entry.id = (SELECT max(id) FROM arrow_entry WHERE arrow_id = shot_tag.arrow_id)
      LEFT JOIN decision ON decision.id = (SELECT max(id) FROM decision WHERE passage_id = passage.id)
      WHERE passage.part_of IS NULL\s"""
          .formatted(
              CalibrationColumns.IS_MEASURED,
              MeasureColumns.BOW.read(),
              MeasureColumns.ARROW.read());

  private static final RowMapper<Figure> FIGURE = Figures.mapper();

  private final Handle handle;

  Shots(Handle handle) {
    this.handle = handle;
  }

  public Optional<Shot> byShotId(String shotId) {
    return query("AND shot_id = ?", shotId).map(Shots::shot).findOne();
  }

  public Optional<Shot> byPassage(long passageId) {
    return query("AND passage.id = ?", passageId).map(Shots::shot).findOne();
  }

  /** The passage whose first edge has the latest time, which isn't always the one stored last. */
  public Optional<Shot> last(String station) {
    return query("AND passage.station = ? ORDER BY fired_ms DESC, passage.id DESC LIMIT 1", station)
        .map(Shots::shot)
        .findOne();
  }

  /** The latest passages by the time of their first edge, the very last first. */
  public List<Shot> latest(String station, int most) {
    return query(
            "AND passage.station = ? ORDER BY fired_ms DESC, passage.id DESC LIMIT ?",
            station,
            most)
        .map(Shots::shot)
        .list();
  }

  /** A shot that counts, as evidence of the bow and arrow it was shot with. */
  public record Known(
      Instant fired,
      long sessionId,
      long bowId,
      long arrowId,
      double speedMps,
      OptionalDouble lengthM) {}

  /** The last shots before an instant that our gates saw, that count and that were tagged. */
  public List<Known> known(String station, Instant before, int most) {
    return handle
        .createQuery(
            """
            SELECT fired_ms, session_id, bow_id, arrow_id, speed_mps, length_m FROM passage
            JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
            JOIN shot_tag ON shot_tag.id = (SELECT max(id) FROM shot_tag WHERE passage_id = passage.id)
            LEFT JOIN decision ON decision.id = (SELECT max(id) FROM decision WHERE passage_id = passage.id)
            WHERE station = ? AND fired_ms < ? AND part_of IS NULL AND speed_mps IS NOT NULL
              AND bow_id IS NOT NULL AND arrow_id IS NOT NULL
              AND CASE decided WHEN 'SET_ASIDE' THEN 0 WHEN 'BROUGHT_BACK' THEN 1 ELSE clean END
            ORDER BY fired_ms DESC LIMIT ?""")
        .bind(0, station)
        .bind(1, before)
        .bind(2, most)
        .map(
            (row, context) ->
                new Known(
                    Instant.ofEpochMilli(row.getLong("fired_ms")),
                    row.getLong("session_id"),
                    row.getLong("bow_id"),
                    row.getLong("arrow_id"),
                    row.getDouble("speed_mps"),
                    Columns.optional(row, "length_m")))
        .list();
  }

  /** The passages of one end, the first first. */
  public List<Shot> ofEnd(String session, int end) {
    return query(
            "AND session.name = ? AND end_number = ? ORDER BY fired_ms, passage.id", session, end)
        .map(Shots::shot)
        .list();
  }

  /** The passages of a session, the first first. */
  public List<Shot> ofSession(String session) {
    return query("AND session.name = ? ORDER BY fired_ms, passage.id", session)
        .map(Shots::shot)
        .list();
  }

  /** How many passages a session has, and how many of them count. */
  public record Tally(int passages, int counting) {}

  public Tally tally(long sessionId) {
    return handle
        .createQuery(
            """
            SELECT count(*) AS passages,
              coalesce(sum(CASE decided WHEN 'SET_ASIDE' THEN 0 WHEN 'BROUGHT_BACK' THEN 1
                ELSE coalesce(clean, reading.speed_mps IS NOT NULL) END), 0) AS counting
            FROM passage
            LEFT JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
            LEFT JOIN reading ON reading.passage_id = passage.id
            LEFT JOIN decision ON decision.id = (SELECT max(id) FROM decision WHERE passage_id = passage.id)
            WHERE session_id = ? AND part_of IS NULL""")
        .bind(0, sessionId)
        .map((row, context) -> new Tally(row.getInt("passages"), row.getInt("counting")))
        .one();
  }

  /** Hands on every passage, the first first, one by one. */
  public void each(Consumer<Shot> consumer) {
    each(query("ORDER BY fired_ms, passage.id"), consumer);
  }

  /** Hands on every passage of one station, the first first, one by one. */
  public void each(String station, Consumer<Shot> consumer) {
    each(query("AND passage.station = ? ORDER BY fired_ms, passage.id", station), consumer);
  }

  private static void each(Query query, Consumer<Shot> consumer) {
    try (var shots = query.map(Shots::shot).stream()) {
      shots.forEach(consumer);
    }
  }

  private Query query(String condition, Object... values) {
    Query query = handle.createQuery(SELECT + condition);
    for (int i = 0; i < values.length; i++) {
      query.bind(i, values[i]);
    }
    return query;
  }

  private static Shot shot(ResultSet row, StatementContext context) throws SQLException {
    return new Shot(
        row.getLong("id"),
        row.getString("shot_id"),
        Instant.ofEpochMilli(row.getLong("fired_ms")),
        row.getBoolean("by_hand") ? byHand(row) : byGates(row),
        row.getString("station"),
        row.getString("session_name"),
        row.getInt("end_number"),
        row.getBoolean("by_hand") ? read(row) : FIGURE.map(row, context),
        bow(row),
        arrow(row),
        decision(row));
  }

  private static Shot.Origin byGates(ResultSet row) throws SQLException {
    return new Shot.ByGates(
        row.getString("device"),
        row.getInt("boot"),
        row.getInt("first_edge"),
        row.getInt("last_edge"),
        row.getDouble("middle_from_bow_m"),
        row.getBoolean("is_measured"));
  }

  private static Shot.Origin byHand(ResultSet row) throws SQLException {
    return new Shot.ByHand(row.getString("source"), row.getString("note"));
  }

  private static Figure read(ResultSet row) throws SQLException {
    return Figure.read(
        row.getLong("id"),
        Columns.optional(row, "read_mps"),
        row.getDouble("read_u_own_mps"),
        row.getDouble("read_u_common_mps"));
  }

  private static Optional<BowState> bow(ResultSet row) throws SQLException {
    Optional<String> name = Columns.optionalText(row, "bow_name");
    return name.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new BowState(
                name.get(),
                row.getLong("bow_id"),
                Instant.ofEpochMilli(row.getLong("since_ms")),
                row.getDouble("draw_weight_n"),
                row.getDouble("draw_length_m"),
                MeasureColumns.BOW.of(row),
                row.getString("done")));
  }

  private static Optional<Arrow> arrow(ResultSet row) throws SQLException {
    Optional<String> name = Columns.optionalText(row, "arrow_name");
    return name.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Arrow(
                row.getLong("arrow_id"),
                name.get(),
                row.getDouble("mass_kg"),
                MeasureColumns.ARROW.of(row)));
  }

  private static Optional<Shot.Decision> decision(ResultSet row) throws SQLException {
    Optional<String> decided = Columns.optionalText(row, "decided");
    return decided.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Shot.Decision(
                Decided.valueOf(decided.get()),
                row.getString("decision_reason"),
                Instant.ofEpochMilli(row.getLong("decision_ms")),
                row.getString("decided_by")));
  }
}
