package castwell.web.chart;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * One axis of a chart.
 *
 * @param label what it shows, with the unit
 * @param low the value down to which it reaches at least, null for as far as the marks go
 * @param high the value up to which it reaches at least, null for as far as the marks go
 * @param names in the place of numbers: one row each, the first on top; a mark's number is its row
 * @param dates whether its numbers are milliseconds since 1970
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Axis(String label, Double low, Double high, List<String> names, boolean dates) {

  public static Axis of(String label) {
    return new Axis(label, null, null, null, false);
  }

  public static Axis dates(String label) {
    return new Axis(label, null, null, null, true);
  }

  public static Axis names(String label, List<String> names) {
    return new Axis(label, null, null, List.copyOf(names), false);
  }

  /** The same axis, made to reach these two values at least. */
  public Axis holding(double value, double other) {
    return new Axis(label, Math.min(value, other), Math.max(value, other), names, dates);
  }
}
