package castwell.capture.store;

import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.speed.Calibration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** The measured dimensions of the gates, each from some instant on. */
public final class Calibrations {
  /** The columns of the row and their order, as they are written. */
  private static final String ENTERED =
      "station, valid_from_ms, valid_to_ms, spacing_m, spacing_u_m, trigger_scatter_m, gates_from_bow_m, oscillator, entered_ms, entered_by, "
          + CalibrationColumns.ADDED;

  private static final String COLUMNS = "id, " + ENTERED + ", " + CalibrationColumns.IS_MEASURED;

  private static final RowMapper<Entry> ENTRY =
      (row, context) ->
          new Entry(
              row.getLong("id"),
              row.getString("station"),
              Instant.ofEpochMilli(row.getLong("valid_from_ms")),
              Columns.optionalLong(row, "valid_to_ms").stream()
                  .mapToObj(Instant::ofEpochMilli)
                  .findFirst(),
              CalibrationColumns.read(row),
              Instant.ofEpochMilli(row.getLong("entered_ms")),
              row.getString("entered_by"));

  private final Handle handle;

  /**
   * A calibration, and when it holds at which station.
   *
   * @param validTo the first instant at which it holds no more; empty when it holds for good
   */
  public record Entry(
      long id,
      String station,
      Instant validFrom,
      Optional<Instant> validTo,
      Calibration calibration,
      Instant entered,
      String enteredBy) {}

  Calibrations(Handle handle) {
    this.handle = handle;
  }

  public long enter(
      String station,
      Instant validFrom,
      Optional<Instant> validTo,
      Calibration calibration,
      Instant entered,
      String by) {
    SetUpErrors errors = calibration.errors();
    return BareSql.returning(
        handle,
        "INSERT INTO calibration ("
            + ENTERED
            + ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) RETURNING id",
        station,
        validFrom,
        validTo,
        calibration.spacingM(),
        calibration.spacingUM(),
        calibration.triggerScatterM(),
        calibration.gatesFromBowM(),
        calibration.oscillator().name(),
        entered,
        by,
        calibration.isMeasured(),
        errors.path().greatestDegrees(),
        errors.planes().outOfParallelM(),
        errors.planes().offMeasuredM(),
        errors.rails().perKelvin(),
        errors.rails().spanK(),
        errors.latencyUnlikeS(),
        errors.dragPerMetre());
  }

  /** The calibrations of every station, in the order entered. */
  public List<Entry> all() {
    return handle
        .createQuery("SELECT " + COLUMNS + " FROM calibration ORDER BY id")
        .map(ENTRY)
        .list();
  }

  /**
   * The calibration in force at an instant: the last entered of those that hold then, else the
   * nearest in time.
   */
  public Optional<Entry> inForce(String station, Instant at) {
    return one(
            "valid_from_ms <= ?2 AND coalesce(valid_to_ms > ?2, TRUE) ORDER BY id DESC",
            station,
            at)
        .or(() -> one("TRUE ORDER BY abs(valid_from_ms - ?2), id DESC", station, at));
  }

  private Optional<Entry> one(String which, String station, Instant at) {
    return BareSql.first(
        handle,
        ENTRY,
        "SELECT " + COLUMNS + " FROM calibration WHERE station = ?1 AND " + which + " LIMIT 1",
        station,
        at);
  }

  /** The stations that have one, by name. */
  public List<String> stations() {
    return handle
        .createQuery("SELECT DISTINCT station FROM calibration ORDER BY station")
        .mapTo(String.class)
        .list();
  }

  /** Every calibration of a station, in the order entered. */
  public List<Entry> of(String station) {
    return handle
        .createQuery("SELECT " + COLUMNS + " FROM calibration WHERE station = ? ORDER BY id")
        .bind(0, station)
        .map(ENTRY)
        .list();
  }

  /** The last calibration that this source entered for a station. */
  public Optional<Entry> lastBy(String station, String by) {
    return of(station).stream()
        .filter(entry -> entry.enteredBy().equals(by))
        .reduce((first, second) -> second);
  }
}
