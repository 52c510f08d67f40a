package castwell.web.report;

import java.util.List;
import java.util.Map;

/**
 * Rows of figures.
 *
 * @param rows by the columns' keys; they may hold more than is shown
 */
public record ReportTable(
    String title, List<ReportColumn> columns, List<Map<String, Object>> rows) {

  public ReportTable {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }
}
