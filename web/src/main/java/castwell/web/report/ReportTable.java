package castwell.web.report;

import java.util.List;

/** Rows of figures; they may hold more than is shown. */
public record ReportTable<R>(String title, List<ReportColumn<R>> columns, List<R> rows) {

  public ReportTable {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }
}
