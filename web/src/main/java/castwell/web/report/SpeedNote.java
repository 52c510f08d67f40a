package castwell.web.report;

import castwell.analysis.bow.BowSums;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.SetUp;
import castwell.capture.cell.SetUps;
import castwell.capture.store.Transaction;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Which speeds a report tells, those at the bow or those at the gates, and whether somebody
 * measured the spacing that they rest on. It is said behind the answer.
 */
public final class SpeedNote {
  private final Set<Boolean> atBow = new HashSet<>();
  private final Set<String> setUps = new HashSet<>();

  private SpeedNote() {}

  /** Of means of cells, each as it is. */
  public static SpeedNote ofCells(Stream<Cell> cells) {
    SpeedNote note = new SpeedNote();
    cells.filter(cell -> !cell.shots().isEmpty()).forEach(note::add);
    return note;
  }

  /** Of curves through the cells of bows. */
  public static SpeedNote ofBows(Stream<BowSums> bows) {
    SpeedNote note = new SpeedNote();
    bows.filter(bow -> bow.shots() > 0)
        .forEach(
            bow -> {
              note.atBow.add(bow.areAtBow());
              bow.cells().forEach(cell -> note.add(cell.setUp()));
            });
    return note;
  }

  private void add(Cell cell) {
    atBow.add(cell.atBow().isKnown());
    add(cell.setUp());
  }

  private void add(SetUp setUp) {
    setUps.add(setUp.name());
  }

  /** How data and tables say it. */
  public static String at(boolean isAtBow) {
    return isAtBow ? "bow" : "gates";
  }

  /** Puts it into sentences, of which the first is the answer. */
  public List<String> in(List<String> sentences, Transaction t, ReportFormat format) {
    if (atBow.isEmpty() || sentences.isEmpty()) {
      return sentences;
    }
    List<String> all = new ArrayList<>(sentences);
    String which = atBow.size() > 1 ? "mixed" : at(atBow.iterator().next());
    all.set(0, all.get(0) + " " + format.say("report.speeds.at_" + which));
    if (SetUps.unmeasured(t).stream().anyMatch(setUps::contains)) {
      all.set(0, all.get(0) + " " + format.say("report.speeds.unmeasured"));
    }
    return all;
  }
}
