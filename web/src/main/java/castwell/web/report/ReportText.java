package castwell.web.report;

import castwell.capture.view.Interval95;
import castwell.capture.view.Plain;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A report as text: the sentences, then the tables in columns. */
public final class ReportText {
  private static final String CANT_TELL = "-";
  private static final String GAP = "  ";

  private ReportText() {}

  static String of(Report<?> report) {
    StringBuilder text = new StringBuilder();
    report.sentences().forEach(sentence -> text.append(sentence).append('\n'));
    for (ReportTable<?> table : report.tables()) {
      if (!table.rows().isEmpty()) {
        text.append('\n').append(table.title()).append('\n');
        lines(table).forEach(line -> text.append(line).append('\n'));
      }
    }
    return text.toString();
  }

  private static <R> List<String> lines(ReportTable<R> table) {
    List<List<String>> cells = new ArrayList<>();
    cells.add(table.columns().stream().map(ReportColumn::heading).toList());
    table
        .rows()
        .forEach(
            row ->
                cells.add(
                    table.columns().stream()
                        .map(column -> shown(column.value(row), column.decimals()))
                        .toList()));
    int[] widths = new int[table.columns().size()];
    for (List<String> line : cells) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], line.get(i).length());
      }
    }
    return cells.stream().map(line -> line(table, line, widths)).toList();
  }

  /** Words stand left, figures right. */
  private static <R> String line(ReportTable<R> table, List<String> cells, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      ReportColumn<R> column = table.columns().get(i);
      boolean words = table.rows().stream().anyMatch(row -> column.value(row) instanceof String);
      String pad = " ".repeat(widths[i] - cells.get(i).length());
      line.append(i == 0 ? "" : GAP).append(words ? cells.get(i) + pad : pad + cells.get(i));
    }
    return line.toString().stripTrailing();
  }

  /** An open end of an interval is told as what it leaves open. */
  public static String shown(Object value, int decimals) {
    if (value instanceof Interval95 ends) {
      Object low = Plain.of(ends.low()).orElse(null);
      Object high = Plain.of(ends.high()).orElse(null);
      return low == null && high == null
          ? CANT_TELL
          : low == null
              ? "up to " + shown(high, decimals)
              : high == null
                  ? shown(low, decimals) + " or more"
                  : shown(low, decimals) + " to " + shown(high, decimals);
    }
    if (value instanceof Double number) {
      String shown = String.format(Locale.ROOT, "%." + decimals + "f", number);
      boolean tooSmall = decimals >= 3 && number > 0 && Double.parseDouble(shown) == 0;
      return tooSmall ? "<" + shown.substring(0, shown.length() - 1) + "1" : shown;
    }
    if (value instanceof Boolean truth) {
      return truth ? "yes" : "no";
    }
    return value == null ? CANT_TELL : value.toString();
  }
}
