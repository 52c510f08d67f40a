package castwell.capture.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
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
              row.getDouble("hz"),
              row.getDouble("hz_relative_u"),
              row.getDouble("air_density"),
              Columns.optional(row, "speed_mps"),
              Columns.optional(row, "speed_u_own_mps"),
              Columns.optional(row, "speed_u_common_mps"),
              Columns.optional(row, "front_mps"),
              Columns.optional(row, "front_u_mps"),
              Columns.optional(row, "tail_mps"),
              Columns.optional(row, "tail_u_mps"),
              Columns.optional(row, "length_m"),
              Columns.optional(row, "length_u_m"),
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

  public void put(Figure figure) {
    BareSql.write(
        handle,
        "INSERT OR REPLACE INTO figure VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        figure.passageId(),
        figure.calibrationId(),
        figure.rulesVersion(),
        figure.hz(),
        figure.hzRelativeU(),
        figure.airDensity(),
        figure.speedMps(),
        figure.speedUOwnMps(),
        figure.speedUCommonMps(),
        figure.frontMps(),
        figure.frontUMps(),
        figure.tailMps(),
        figure.tailUMps(),
        figure.lengthM(),
        figure.lengthUM(),
        figure.clean(),
        figure.verdict(),
        figure.reason());
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
