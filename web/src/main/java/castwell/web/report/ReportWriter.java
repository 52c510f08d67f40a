package castwell.web.report;

import castwell.capture.view.Interval95;
import castwell.capture.view.Json;
import castwell.capture.view.Plain;
import castwell.capture.word.SpreadsheetText;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A report as text to read aloud, as JSON, or its first table as CSV (RFC 4180). */
public final class ReportWriter {
  private static final CSVFormat CSV = CSVFormat.RFC4180;

  /** In what a report is written. */
  public enum Format {
    text,
    json,
    csv
  }

  private ReportWriter() {}

  /** Writes everything and leaves the writer open. */
  public static void write(Report<?> report, Format format, Writer writer) throws IOException {
    switch (format) {
      case text -> writer.write(ReportText.of(report));
      case json -> {
        writer.write(Json.indented(report.data()));
        writer.write('\n');
      }
      case csv -> csv(report, writer);
    }
    writer.flush();
  }

  /** An interval takes two columns. */
  private static void csv(Report<?> report, Writer writer) throws IOException {
    if (!report.tables().isEmpty()) {
      csv(report.tables().get(0), new CSVPrinter(writer, CSV));
    }
  }

  private static <R> void csv(ReportTable<R> table, CSVPrinter printer) throws IOException {
    List<Object> headings = new ArrayList<>();
    for (ReportColumn<R> column : table.columns()) {
      if (isInterval(table, column)) {
        headings.add(column.key() + "_low");
        headings.add(column.key() + "_high");
      } else {
        headings.add(column.key());
      }
    }
    printer.printRecord(headings);
    for (R row : table.rows()) {
      List<Object> values = new ArrayList<>();
      for (ReportColumn<R> column : table.columns()) {
        Object value = column.value(row);
        if (isInterval(table, column)) {
          Interval95 ends = value instanceof Interval95 known ? known : Interval95.NOT_KNOWN;
          values.add(Plain.of(ends.low()).orElse(null));
          values.add(Plain.of(ends.high()).orElse(null));
        } else {
          values.add(value instanceof String words ? SpreadsheetText.guarded(words) : value);
        }
      }
      printer.printRecord(values);
    }
  }

  private static <R> boolean isInterval(ReportTable<R> table, ReportColumn<R> column) {
    return table.rows().stream().anyMatch(row -> column.value(row) instanceof Interval95);
  }
}
