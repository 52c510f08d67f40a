package castwell.capture.cell;

import castwell.analysis.cell.Cell;
import castwell.analysis.outlier.PooledStrays;
import castwell.analysis.outlier.PooledStrays.Findings;
import castwell.analysis.outlier.PooledStrays.Stray;
import castwell.analysis.wording.Phrase;
import castwell.capture.word.Rounded;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A session's cells and the strays among their shots.
 *
 * @param all every cell of the session, of all its bows, as judged by rule and by person
 * @param findings the strays among them
 */
public record SessionCells(String session, List<Cell> all, Findings findings) {

  static SessionCells of(String session, List<Cell> cells) {
    List<double[]> speeds = cells.stream().map(Cell::speedsMps).toList();
    List<boolean[]> kept = cells.stream().map(SessionCells::kept).toList();
    return new SessionCells(session, List.copyOf(cells), PooledStrays.find(speeds, kept));
  }

  private static boolean[] kept(Cell cell) {
    boolean[] kept = new boolean[cell.shots().size()];
    for (int i = 0; i < kept.length; i++) {
      kept[i] = cell.shots().get(i).kept();
    }
    return kept;
  }

  /** The cells without the strays. */
  public List<Cell> cells() {
    List<Cell> cells = new ArrayList<>(all);
    for (int i = 0; i < cells.size(); i++) {
      Cell cell = cells.get(i);
      for (Stray stray : findings.excluded()) {
        if (stray.cell() == i) {
          String id = all.get(i).shots().get(stray.index()).id();
          cell = cell.without(Set.of(id), reason(stray));
        }
      }
      cells.set(i, cell);
    }
    return cells;
  }

  public Set<String> strays() {
    Set<String> ids = new HashSet<>();
    findings.excluded().forEach(stray -> ids.add(id(stray)));
    return ids;
  }

  public String id(Stray stray) {
    return all.get(stray.cell()).shots().get(stray.index()).id();
  }

  private static Phrase reason(Stray stray) {
    return Phrase.of(
        "report.strays.reason",
        Rounded.to(1, Math.abs(stray.studentized())),
        Rounded.p(stray.adjustedP()));
  }
}
