package castwell.web.report;

import castwell.capture.word.SpreadsheetText;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A report as text to read aloud, as JSON, or its first table as CSV (RFC 4180). */
public final class ReportWriter {
  private static final JsonMapper JSON =
      JsonMapper.builder()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)
          .build();

  private static final CSVFormat CSV = CSVFormat.RFC4180;

  /** In what a report is written. */
  public enum Format {
    text,
    json,
    csv
  }

  private ReportWriter() {}

  /** Writes everything and leaves the writer open. */
  public static void write(Report report, Format format, Writer writer) throws IOException {
    switch (format) {
      case text -> writer.write(ReportText.of(report));
      case json -> {
        JSON.writeValue(writer, report.data());
        writer.write('\n');
      }
      case csv -> csv(report, writer);
    }
    writer.flush();
  }

  /** An interval takes two columns. */
  private static void csv(Report report, Writer writer) throws IOException {
    if (report.tables().isEmpty()) {
      return;
    }
    ReportTable table = report.tables().get(0);
    List<String> keys = table.columns().stream().map(ReportColumn::key).toList();
    CSVPrinter printer = new CSVPrinter(writer, CSV);
    List<Object> headings = new ArrayList<>();
    for (String key : keys) {
      if (isInterval(table, key)) {
        headings.add(key + "_low");
        headings.add(key + "_high");
      } else {
        headings.add(key);
      }
    }
    printer.printRecord(headings);
    for (Map<String, Object> row : table.rows()) {
      List<Object> values = new ArrayList<>();
      for (String key : keys) {
        if (isInterval(table, key)) {
          values.addAll(row.get(key) instanceof List<?> ends ? ends : Trade.NOT_KNOWN);
        } else {
          Object value = row.get(key);
          values.add(value instanceof String words ? SpreadsheetText.guarded(words) : value);
        }
      }
      printer.printRecord(values);
    }
  }

  private static boolean isInterval(ReportTable table, String key) {
    return table.rows().stream().anyMatch(row -> row.get(key) instanceof List<?>);
  }
}
