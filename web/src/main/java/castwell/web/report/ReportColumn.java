package castwell.web.report;

import castwell.capture.view.Plain;
import java.util.function.Function;

/**
 * One column of a report's table.
 *
 * @param key its name in a spreadsheet
 * @param heading with its unit
 * @param decimals how many of a number are shown to people
 * @param of what a row holds of it
 */
public record ReportColumn<R>(String key, String heading, int decimals, Function<R, Object> of) {

  public static <R> ReportColumn<R> text(String key, String heading, Function<R, Object> of) {
    return new ReportColumn<>(key, heading, 0, of);
  }

  /** Null is "can't tell". */
  Object value(R row) {
    return Plain.of(of.apply(row)).orElse(null);
  }
}
