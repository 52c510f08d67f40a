package castwell.web.report.rework;

import castwell.analysis.cell.CellSums;
import castwell.analysis.compare.ArrowChange;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** One bow's cells before and after: the bow's that was reworked, or a control's. */
public record Pair(String bow, List<CellSums> before, List<CellSums> after) {

  /** The arrows that were shot both before and after, by their repeats alone. */
  public List<ArrowChange> arrows() {
    return before.stream()
        .map(cell -> cell.name().arrow())
        .distinct()
        .filter(arrow -> !of(arrow, after).isEmpty())
        .map(arrow -> ArrowChange.of(of(arrow, before), of(arrow, after)))
        .toList();
  }

  private static List<CellSums> of(String arrow, List<CellSums> cells) {
    return cells.stream().filter(cell -> cell.name().arrow().equals(arrow)).toList();
  }

  static Set<String> sessions(List<CellSums> cells) {
    Set<String> sessions = new LinkedHashSet<>();
    cells.forEach(cell -> sessions.add(cell.name().session()));
    return sessions;
  }
}
