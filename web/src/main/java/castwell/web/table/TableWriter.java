package castwell.web.table;

import castwell.capture.store.Transaction;
import castwell.capture.view.Column;
import castwell.capture.word.SpreadsheetText;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Writes a table as CSV (RFC 4180) or JSON, row by row. */
public final class TableWriter {
  /**
   * So many digits are enough to rebuild what follows from a figure, and leave out a double's
   * rounding noise.
   */
  private static final MathContext DIGITS = new MathContext(12);

  private static final CSVFormat CSV = CSVFormat.RFC4180;

  /** The forms in which a table can be written. */
  public enum Format {
    csv,
    json
  }

  private TableWriter() {}

  /** Writes the whole table, and leaves the writer open. */
  public static <R> void write(
      Table<R> table, Transaction transaction, Format format, Writer writer) {
    try {
      switch (format) {
        case csv -> csv(table, transaction, writer);
        case json -> json(table, transaction, writer);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private interface RowWriter<R> {
    void write(R row) throws IOException;
  }

  private static <R> void each(Table<R> table, Transaction transaction, RowWriter<R> writer) {
    table
        .rows()
        .each(
            transaction,
            row -> {
              try {
                writer.write(row);
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            });
  }

  private static <R> void csv(Table<R> table, Transaction transaction, Writer writer)
      throws IOException {
    CSVPrinter printer = new CSVPrinter(writer, CSV);
    for (Column<R> column : table.columns()) {
      printer.print(column.name());
    }
    printer.println();
    each(
        table,
        transaction,
        row -> {
          for (Column<R> column : table.columns()) {
            printer.print(text(column.value().apply(row)));
          }
          printer.println();
        });
    printer.flush();
  }

  private static <R> void json(Table<R> table, Transaction transaction, Writer writer)
      throws IOException {
    JsonGenerator json =
        JsonMapper.builder()
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build()
            .createGenerator(writer);
    json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    json.writeStartArray();
    each(
        table,
        transaction,
        row -> {
          json.writeRaw('\n');
          json.writeStartObject();
          for (Column<R> column : table.columns()) {
            json.writePOJOField(column.name(), rounded(column.value().apply(row)).orElse(null));
          }
          json.writeEndObject();
        });
    json.writeEndArray();
    json.writeRaw('\n');
    json.close();
  }

  private static String text(Optional<?> value) {
    Object written = rounded(value).orElse(null);
    if (written instanceof String words) {
      return SpreadsheetText.guarded(words);
    }
    return written instanceof BigDecimal number
        ? number.toPlainString()
        : Objects.toString(written, null);
  }

  /** The value in the form in which it is written: a decimal number without an exponent. */
  private static Optional<?> rounded(Optional<?> value) {
    return value.map(v -> v instanceof Double number ? plain(number) : v);
  }

  /** The number with a scale of at least 0, so that it isn't written as 1E+2. */
  private static BigDecimal plain(double number) {
    BigDecimal rounded = new BigDecimal(number).round(DIGITS).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }
}
