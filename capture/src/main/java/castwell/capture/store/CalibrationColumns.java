package castwell.capture.store;

import castwell.analysis.setup.ObliquePath;
import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.setup.UnparallelPlanes;
import castwell.analysis.setup.WarmRails;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import java.sql.ResultSet;
import java.sql.SQLException;

/** How a row tells how the gates stand. Rows of earlier programs don't tell all of it. */
final class CalibrationColumns {
  static final String ADDED =
      "spacing_measured, path_degrees, out_of_parallel_m, off_measured_m, rails_per_k, rails_span_k, latency_unlike_s, drag_per_m";

  /**
   * Whether somebody measured the spacing, as a column. Where that isn't told, the settings' own is
   * measured by nobody while it is what they begin with.
   */
  static final String IS_MEASURED =
      """
      coalesce(calibration.spacing_measured, NOT (calibration.entered_by = 'the configuration'
        AND abs(calibration.spacing_m - %s) < 1e-9 AND abs(calibration.spacing_u_m - %s) < 1e-9)) AS is_measured"""
          .formatted(Calibration.UNTOUCHED_M, Calibration.UNTOUCHED_U_M);

  private CalibrationColumns() {}

  static Calibration read(ResultSet row) throws SQLException {
    Calibration entered =
        new Calibration(
            row.getDouble("spacing_m"),
            row.getDouble("spacing_u_m"),
            row.getDouble("trigger_scatter_m"),
            row.getDouble("gates_from_bow_m"),
            Oscillator.valueOf(row.getString("oscillator")),
            true,
            errors(row));
    return row.getBoolean("is_measured") ? entered : entered.unmeasured();
  }

  private static SetUpErrors errors(ResultSet row) throws SQLException {
    double path = row.getDouble("path_degrees");
    if (row.wasNull()) {
      return SetUpErrors.USUAL;
    }
    return new SetUpErrors(
        new ObliquePath(path),
        new UnparallelPlanes(row.getDouble("out_of_parallel_m"), row.getDouble("off_measured_m")),
        new WarmRails(row.getDouble("rails_per_k"), row.getDouble("rails_span_k")),
        row.getDouble("latency_unlike_s"),
        row.getDouble("drag_per_m"));
  }
}
