package castwell.capture.intake.sheet;

import java.util.List;
import java.util.Map;

/**
 * A file's lines, with what stands where.
 *
 * @param notRead headings that aren't ours, each with what it may be a slip for
 */
public record Sheet(List<Line> lines, List<String> notRead) {

  /**
   * @param source the file's name, for sentences
   * @param map the file's headings to ours, where they differ
   * @throws SheetRefused when it can't be read at all
   */
  public static Sheet read(String source, SheetKind what, String text, Map<String, String> map) {
    CsvText csv = CsvText.of(source, text);
    if (csv.rows().isEmpty()) {
      throw new SheetRefused("sheet.no_columns", source, example(what));
    }
    List<CsvText.Row> rows = csv.rows();
    Headings headings = Headings.of(source, what, rows.get(0).cells(), map);
    if (rows.size() == 1) {
      throw new SheetRefused("sheet.headings_alone", source);
    }
    return new Sheet(
        rows.stream().skip(1).map(row -> new Line(row, headings, csv.decimalComma())).toList(),
        headings.notRead());
  }

  private static String example(SheetKind what) {
    return String.join(
        ",",
        what.fields().stream().filter(SheetColumn::needed).map(SheetColumn::usualHeading).toList());
  }
}
