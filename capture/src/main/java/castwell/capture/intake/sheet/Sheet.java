package castwell.capture.intake.sheet;

import java.util.List;
import java.util.Map;

/**
 * A file's lines, ready to be read by column.
 *
 * @param notRead headings that aren't ours, each with kind it may be a slip for
 */
public record Sheet(List<Line> lines, List<String> notRead) {

  /**
   * @param source the file's name, for sentences
   * @param map the file's headings to ours, where they differ
   * @throws SheetRefused when the file can't be read at all
   */
  public static Sheet read(String source, SheetKind kind, String text, Map<String, String> map) {
    CsvText csv = CsvText.of(source, text);
    if (csv.rows().isEmpty()) {
      throw new SheetRefused("sheet.no_columns", source, example(kind));
    }
    List<CsvText.Row> rows = csv.rows();
    Headings headings = Headings.of(source, kind, rows.get(0).cells(), map);
    if (rows.size() == 1) {
      throw new SheetRefused("sheet.headings_alone", source);
    }
    return new Sheet(
        rows.stream().skip(1).map(row -> new Line(row, headings, csv.decimalComma())).toList(),
        headings.notRead());
  }

  private static String example(SheetKind kind) {
    return String.join(
        ",",
        kind.columns().stream()
            .filter(SheetColumn::needed)
            .map(SheetColumn::usualHeading)
            .toList());
  }
}
