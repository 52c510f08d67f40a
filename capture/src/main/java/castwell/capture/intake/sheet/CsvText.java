package castwell.capture.intake.sheet;

import castwell.capture.word.SpreadsheetText;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A CSV file's cells (RFC 4180) in the forms that spreadsheets write: separated by commas or
 * semicolons, with or without a byte order mark. Empty lines are left out.
 *
 * @param decimalComma whether numbers may have one: where semicolons separate
 */
public record CsvText(List<Row> rows, boolean decimalComma) {
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  /**
   * @param line the number of the line at which it begins; the first is 1
   */
  public record Row(int line, List<String> cells) {}

  /**
   * @throws SheetRefused when it isn't CSV
   */
  public static CsvText of(String source, String text) {
    String plain = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    String first = plain.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
    boolean semicolons = count(first, ';') > count(first, ',');
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setDelimiter(semicolons ? ';' : ',')
            .setIgnoreEmptyLines(false)
            .setIgnoreSurroundingSpaces(true)
            .get();
    List<Row> rows = new ArrayList<>();
    long begun = 1;
    try (CSVParser parser = CSVParser.parse(plain, format)) {
      for (CSVRecord read : parser) {
        List<String> cells =
            StreamSupport.stream(read.spliterator(), false)
                .map(cell -> SpreadsheetText.unguarded(cell.strip()))
                .toList();
        if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
          rows.add(new Row((int) begun, cells));
        }
        begun = parser.getCurrentLineNumber() + 1;
      }
    } catch (IOException | UncheckedIOException e) {
      throw new SheetRefused("sheet.no_csv", source, begun);
    }
    return new CsvText(rows, semicolons);
  }

  private static long count(String text, char sought) {
    return text.chars().filter(c -> c == sought).count();
  }
}
