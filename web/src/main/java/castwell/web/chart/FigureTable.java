package castwell.web.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * A table of figures, as text.
 *
 * @param headings with their units; the first is that of the rows' names
 * @param rows as many cells each as there are headings
 */
public record FigureTable(List<String> headings, List<List<String>> rows) {

  public FigureTable {
    headings = List.copyOf(headings);
    rows = List.copyOf(rows);
    for (List<String> row : rows) {
      if (row.size() != headings.size()) {
        throw new IllegalArgumentException(
            "a row of %d cells under %d headings".formatted(row.size(), headings.size()));
      }
    }
  }

  public boolean isEmpty() {
    return rows.isEmpty();
  }

  /** Builds a table row by row. */
  public static final class Rows {
    private final List<String> headings;
    private final List<List<String>> rows = new ArrayList<>();

    public Rows(String... headings) {
      this.headings = List.of(headings);
    }

    public Rows add(String... cells) {
      rows.add(List.of(cells));
      return this;
    }

    public FigureTable table() {
      return new FigureTable(headings, rows);
    }
  }
}
