package castwell.capture.store;

import castwell.analysis.reading.Known;
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

  static Conditions conditions(ResultSet row) throws SQLException {
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
        new Conditions.SessionTold(
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
