package castwell.capture.intake;

import castwell.capture.intake.sheet.CsvText;
import castwell.capture.intake.sheet.Headings;
import castwell.capture.intake.sheet.SheetColumn;
import castwell.capture.intake.sheet.SheetRefused;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A look at a sheet before it is taken in.
 *
 * @param headings the file's own
 * @param meant which of our headings each of them is read as, by its name; those that aren't ours
 *     are missing
 * @param rows the first ones, as they are written
 * @param columns every heading that such a sheet may have; true for those it needs
 */
public record Look(
    List<String> headings,
    Map<String, String> meant,
    List<List<String>> rows,
    Map<String, Boolean> columns) {
  private static final int MOST_ROWS = 5;

  /**
   * @throws SheetRefused when it isn't CSV, or empty
   */
  public static Look at(Brought brought) {
    List<CsvText.Row> rows = CsvText.of(brought.source(), brought.text()).rows();
    if (rows.isEmpty()) {
      throw new SheetRefused("sheet.empty", brought.source());
    }
    Map<String, Boolean> columns = new LinkedHashMap<>();
    for (SheetColumn column : brought.kind().columns()) {
      column
          .headings()
          .keySet()
          .forEach(
              heading ->
                  columns.put(heading, column.needed() && heading.equals(column.usualHeading())));
    }
    Map<String, String> meant = new LinkedHashMap<>();
    List<String> headings = rows.get(0).cells();
    for (String heading : headings) {
      String plain = Headings.plain(heading);
      String ours = brought.map().getOrDefault(heading, columns.containsKey(plain) ? plain : "");
      if (!ours.isEmpty()) {
        meant.put(heading, ours);
      }
    }
    return new Look(
        headings,
        meant,
        rows.stream().skip(1).limit(MOST_ROWS).map(CsvText.Row::cells).toList(),
        columns);
  }
}
