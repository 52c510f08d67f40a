package castwell.capture.store;

import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Derived figures: one for each passage and calibration, rebuilt at will. */
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
    handle
        .createUpdate(
            """
            INSERT OR REPLACE INTO figure VALUES (:passageId, :calibrationId, :rulesVersion, :hz, :hzRelativeU,
              :airDensity, :speedMps, :speedUOwnMps, :speedUCommonMps, :frontMps, :frontUMps, :tailMps, :tailUMps,
              :lengthM, :lengthUM, :clean, :verdict, :reason)""")
        .bindMethods(figure)
        .execute();
  }

  public Optional<Figure> of(long passageId, long calibrationId) {
    return history(passageId).stream()
        .filter(figure -> figure.calibrationId() == calibrationId)
        .findFirst();
  }

  /** Under every calibration that was ever in force for it, in the order these were entered. */
  public List<Figure> history(long passageId) {
    return handle
        .createQuery("SELECT * FROM figure WHERE passage_id = ? ORDER BY calibration_id")
        .bind(0, passageId)
        .map(MAPPER)
        .list();
  }
}
