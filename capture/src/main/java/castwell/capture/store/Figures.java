package castwell.capture.store;

import castwell.analysis.reading.Known;
import castwell.analysis.speed.TickRate;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.result.ResultIterable;

/** Derived figures: one for each passage and calibration. They can be made again at any time. */
public final class Figures {
  private static final RowMapper<Figure> MAPPER =
      (row, context) ->
          new Figure(
              row.getLong("passage_id"),
              row.getLong("calibration_id"),
              row.getInt("rules_version"),
              conditions(row),
              Columns.optional(row, "speed_mps"),
              Columns.optional(row, "speed_u_own_mps"),
              Columns.optional(row, "speed_u_common_mps"),
              Columns.optional(row, "front_mps"),
              Columns.optional(row, "front_u_mps"),
              Columns.optional(row, "tail_mps"),
              Columns.optional(row, "tail_u_mps"),
              Columns.optional(row, "length_m"),
              Columns.optional(row, "length_u_m"),
              Columns.optional(row, "margin"),
              new Conditions.Strays(row.getInt("strays_a"), row.getInt("strays_b")),
              row.getBoolean("clean"),
              row.getString("verdict"),
              row.getString("reason"));

  private final Handle handle;

  Figures(Handle handle) {
    this.handle = handle;
  }

  static RowMapper<Figure> mapper() {
    return MAPPER;
  }

  private static Conditions conditions(ResultSet row) throws SQLException {
    OptionalDouble speed = Columns.optional(row, "cell_speed_mps");
    Optional<Known> cellSpeed =
        speed.isEmpty()
            ? Optional.empty()
            : Optional.of(new Known(speed.getAsDouble(), row.getDouble("cell_speed_u_mps")));
    double hz = row.getDouble("hz");
    return new Conditions(
        Columns.optional(row, "read_hz").orElse(hz),
        hz,
        row.getDouble("hz_relative_u"),
        row.getDouble("air_density"),
        new Conditions.SessionGates(
            Columns.optional(row, "trigger_m"),
            row.getDouble("tail_late_m"),
            row.getDouble("tail_late_u_m")),
        new Conditions.Tagged(Columns.optional(row, "tagged_length_m"), cellSpeed),
        new Conditions.Strays(row.getInt("strays_before_a"), row.getInt("strays_before_b")));
  }

  private static OptionalDouble value(Optional<Known> known, ToDoubleFunction<Known> part) {
    return known.stream().mapToDouble(part).findFirst();
  }

  public void put(Figure figure) {
    Conditions given = figure.conditions();
    BareSql.write(
        handle,
        """
        INSERT OR REPLACE INTO figure (passage_id, calibration_id, rules_version, read_hz, hz, hz_relative_u, air_density,
          trigger_m, tail_late_m, tail_late_u_m, tagged_length_m, cell_speed_mps, cell_speed_u_mps, strays_before_a, strays_before_b,
          speed_mps, speed_u_own_mps, speed_u_common_mps, front_mps, front_u_mps, tail_mps, tail_u_mps,
          length_m, length_u_m, margin, strays_a, strays_b, clean, verdict, reason)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""",
        figure.passageId(),
        figure.calibrationId(),
        figure.rulesVersion(),
        given.readHz(),
        given.hz(),
        given.hzRelativeU(),
        given.airDensity(),
        given.gates().triggerM(),
        given.gates().tailLateM(),
        given.gates().tailLateUM(),
        given.tagged().lengthM(),
        value(given.tagged().cellSpeed(), Known::value),
        value(given.tagged().cellSpeed(), Known::u),
        given.strays().a(),
        given.strays().b(),
        figure.speedMps(),
        figure.speedUOwnMps(),
        figure.speedUCommonMps(),
        figure.frontMps(),
        figure.frontUMps(),
        figure.tailMps(),
        figure.tailUMps(),
        figure.lengthM(),
        figure.lengthUM(),
        figure.margin(),
        figure.strays().a(),
        figure.strays().b(),
        figure.clean(),
        figure.verdict(),
        figure.reason());
  }

  /**
   * Lets the figures of what a board shot in a session follow its tick rate. Every speed is as many
   * times the rate, so only how well the rate is known enters anew: the uncertainty in common holds
   * the rate's own share as a square.
   */
  public void follow(long sessionId, long boardId, TickRate rate) {
    BareSql.write(
        handle,
        """
        UPDATE figure SET
          speed_mps = speed_mps * (?1 / hz),
          speed_u_own_mps = speed_u_own_mps * (?1 / hz),
          speed_u_common_mps = (?1 / hz) * sqrt(speed_u_common_mps * speed_u_common_mps
            + speed_mps * speed_mps * (?2 * ?2 - hz_relative_u * hz_relative_u)),
          front_mps = front_mps * (?1 / hz),
          front_u_mps = (?1 / hz) * sqrt(front_u_mps * front_u_mps
            + front_mps * front_mps * (?2 * ?2 - hz_relative_u * hz_relative_u)),
          tail_mps = tail_mps * (?1 / hz),
          tail_u_mps = (?1 / hz) * sqrt(tail_u_mps * tail_u_mps
            + tail_mps * tail_mps * (?2 * ?2 - hz_relative_u * hz_relative_u)),
          read_hz = coalesce(read_hz, hz), hz = ?1, hz_relative_u = ?2
        FROM passage WHERE passage.id = figure.passage_id AND passage.calibration_id = figure.calibration_id
          AND session_id = ?3 AND board_id = ?4 AND part_of IS NULL""",
        rate.hz(),
        rate.relativeU(),
        sessionId,
        boardId);
  }

  /**
   * How often each gate was blocked by something that was no arrow, in the passages of a boot from
   * a tick on and before an edge.
   */
  public Conditions.Strays straysBefore(long boardId, int boot, int edge, long fromTicks) {
    return BareSql.first(
            handle,
            (row, context) -> new Conditions.Strays(row.getInt(1), row.getInt(2)),
            """
            SELECT coalesce(sum(strays_a), 0), coalesce(sum(strays_b), 0) FROM (
              SELECT id, calibration_id, first_ticks FROM passage
              WHERE board_id = ? AND boot = ? AND first_edge < ? AND part_of IS NULL
              ORDER BY first_edge DESC LIMIT 64) AS near
            JOIN figure ON figure.passage_id = near.id AND figure.calibration_id = near.calibration_id
            WHERE first_ticks >= ?""",
            boardId,
            boot,
            edge,
            fromTicks)
        .orElse(Conditions.Strays.NONE);
  }

  /** What the session's newest shot by a board was told of the gates. */
  public Optional<Conditions.SessionGates> newestGates(long sessionId, long boardId) {
    return BareSql.first(
        handle,
        (row, context) -> conditions(row).gates(),
        """
        SELECT figure.* FROM passage
        JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
        WHERE session_id = ? AND board_id = ? AND part_of IS NULL ORDER BY fired_ms DESC LIMIT 1""",
        sessionId,
        boardId);
  }

  /** Whether the tails of a session's newest passage are corrected to the fronts. */
  public boolean areTailsCorrected(long sessionId) {
    return BareSql.first(
            handle,
            (row, context) -> row.getDouble(1) != 0,
            """
            SELECT tail_late_m FROM passage
            JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
            WHERE session_id = ? AND board_id IS NOT NULL AND part_of IS NULL ORDER BY fired_ms DESC LIMIT 1""",
            sessionId)
        .orElse(false);
  }

  /** The speeds of front and tail of one shot that counts, in m/s. */
  public record Ends(double speedMps, double frontMps, double tailMps) {}

  /** Those of a board's shots in a session that count and have both, the first first. */
  public List<Ends> ends(long sessionId, long boardId) {
    return BareSql.list(
        handle,
        (row, context) -> new Ends(row.getDouble(1), row.getDouble(2), row.getDouble(3)),
        """
        SELECT speed_mps, front_mps, tail_mps FROM passage
        JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
        WHERE session_id = ? AND board_id = ? AND part_of IS NULL AND clean AND front_mps > 0 AND tail_mps > 0
        ORDER BY fired_ms, passage.id""",
        sessionId,
        boardId);
  }

  /**
   * A board's shots of a session whose verdict may change with its tick rate: those near a limit of
   * speed, or whose story is hardly likelier, or just unlikely, or hardly sure enough.
   *
   * @param limitsMps the least and the greatest speed of an arrow
   * @param enough the margin from which on a story is believed
   */
  public List<Long> nearALimit(
      long sessionId, long boardId, double[] limitsMps, double enough, double greatestU) {
    return BareSql.list(
        handle,
        (row, context) -> row.getLong(1),
        """
        SELECT passage.id FROM passage
        JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
        WHERE session_id = ? AND board_id = ? AND part_of IS NULL AND (
          abs(speed_mps - ?) < 0.001 * speed_mps OR abs(speed_mps - ?) < 0.001 * speed_mps
          OR abs(margin - ?) < 0.1 OR abs(speed_u_own_mps - ? * speed_mps) < 0.001 * speed_mps)""",
        sessionId,
        boardId,
        limitsMps[0],
        limitsMps[1],
        enough,
        greatestU);
  }

  /** Whether all figures were brought up to these rules. */
  public boolean areRenewed(int rulesVersion) {
    return BareSql.returning(handle, "SELECT coalesce(max(rules_version), 0) FROM renewal")
        >= rulesVersion;
  }

  public void noteRenewed(int rulesVersion, int passages, Instant at) {
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

  /** What one board shot in one session. */
  public record Judged(long sessionId, long boardId) {}

  public Optional<Figure> of(long passageId, long calibrationId) {
    return history(passageId).stream()
        .filter(figure -> figure.calibrationId() == calibrationId)
        .findFirst();
  }

  /**
   * A passage's figures under every calibration that was ever in force for it, in the order these
   * were entered.
   */
  public List<Figure> history(long passageId) {
    return BareSql.list(
        handle,
        MAPPER,
        "SELECT * FROM figure WHERE passage_id = ? ORDER BY calibration_id",
        passageId);
  }

  /** A figure with the shot and the calibration that it belongs to. */
  public record ExportedFigure(
      String shotId,
      String station,
      Instant entered,
      double spacingM,
      boolean isMeasured,
      boolean inForce,
      Figure figure) {}

  /** Hands on every figure, by shot and calibration. */
  public void each(Consumer<ExportedFigure> consumer) {
    try (var figures = exported("").stream()) {
      figures.forEach(consumer);
    }
  }

  /** Hands on every figure of one station's shots, by shot and calibration. */
  public void each(String station, Consumer<ExportedFigure> consumer) {
    try (var figures = exported("AND passage.station = ?", station).stream()) {
      figures.forEach(consumer);
    }
  }

  /** A shot's figures, by calibration. */
  public List<ExportedFigure> exported(long passageId) {
    return exported("AND passage_id = ?", passageId).list();
  }

  private ResultIterable<ExportedFigure> exported(String condition, Object... values) {
    return handle
        .select(
            """
            SELECT shot_id, passage.station, calibration.entered_ms, spacing_m, %s,
              figure.calibration_id = passage.calibration_id AS in_force, figure.*
            FROM figure JOIN passage ON passage.id = passage_id
            JOIN calibration ON calibration.id = figure.calibration_id
            WHERE part_of IS NULL %s ORDER BY fired_ms, passage_id, figure.calibration_id"""
                .formatted(CalibrationColumns.IS_MEASURED, condition),
            values)
        .map(
            (row, context) ->
                new ExportedFigure(
                    row.getString("shot_id"),
                    row.getString("station"),
                    Instant.ofEpochMilli(row.getLong("entered_ms")),
                    row.getDouble("spacing_m"),
                    row.getBoolean("is_measured"),
                    row.getBoolean("in_force"),
                    MAPPER.map(row, context)));
  }
}
