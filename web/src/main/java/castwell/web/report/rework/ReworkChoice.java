package castwell.web.report.rework;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellSums;
import castwell.capture.store.Rack;
import castwell.capture.store.Transaction;
import castwell.web.report.BowCells;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What can be asked of a rework, and what one would ask first: the last one of the bow.
 *
 * @param bows those of the rack
 * @param bow the one looked at, "" on an empty rack
 * @param days the sessions in which it was shot, the first first
 * @param before the last of them before its last rework, or the first
 * @param after the first since then, or the last
 * @param others the other bows
 * @param controls those of them that were shot on both days and left as they were
 */
public record ReworkChoice(
    List<String> bows,
    String bow,
    List<String> days,
    String before,
    String after,
    List<String> others,
    List<String> controls) {

  /** Of more one chooses by the address. */
  private static final int MOST_CELLS = 600;

  /** The same choice with what somebody asks of it. */
  public ReworkChoice asking(String askedBefore, String askedAfter, List<String> askedControls) {
    return new ReworkChoice(bows, bow, days, askedBefore, askedAfter, others, askedControls);
  }

  public static ReworkChoice of(Transaction t, ZoneId zone, Optional<String> asked) {
    BowCells bowCells = new BowCells(t, zone);
    List<Rack.Named> all = t.rack().bowNames();
    List<String> bows = all.stream().map(Rack.Named::name).toList();
    if (all.isEmpty()) {
      return new ReworkChoice(bows, "", List.of(), "", "", List.of(), List.of());
    }
    Rack.Named bow =
        asked
            .map(bowCells::bow)
            .orElseGet(
                () ->
                    all.stream()
                        .filter(b -> t.rack().states(b.id()).size() > 1)
                        .findFirst()
                        .orElse(all.get(0)));
    List<CellSums> cells = cells(bowCells, bow);
    List<String> days = cells.stream().map(cell -> cell.name().session()).distinct().toList();
    String now = bowCells.name(bowCells.now(bow));
    String before = last(cells, now).orElse(days.isEmpty() ? "" : days.get(0));
    String after =
        cells.stream()
            .filter(cell -> cell.name().state().equals(now))
            .map(cell -> cell.name().session())
            .filter(session -> !session.equals(before))
            .findFirst()
            .orElse(days.isEmpty() ? "" : days.get(days.size() - 1));
    List<String> others = bows.stream().filter(name -> !name.equals(bow.name())).toList();
    List<Cell> then = cells(bowCells, before);
    List<Cell> later = cells(bowCells, after);
    List<String> controls =
        all.stream()
            .map(Rack.Named::name)
            .filter(name -> !name.equals(bow.name()) && isControl(name, then, later))
            .toList();
    return new ReworkChoice(bows, bow.name(), days, before, after, others, controls);
  }

  private static List<CellSums> cells(BowCells bowCells, Rack.Named bow) {
    return bowCells.ledger().ofBow(bow, MOST_CELLS).stream()
        .filter(cell -> !cell.isEmpty())
        .toList();
  }

  /** The last session in another state than that. */
  private static Optional<String> last(List<CellSums> cells, String state) {
    return cells.stream()
        .filter(cell -> !cell.name().state().equals(state))
        .map(cell -> cell.name().session())
        .reduce((first, second) -> second);
  }

  private static List<Cell> cells(BowCells bowCells, String session) {
    return session.isEmpty()
        ? List.of()
        : bowCells.cells().ofSession(session).cells().stream()
            .filter(cell -> !cell.shots().isEmpty())
            .toList();
  }

  /** Shot on both days, in one state. */
  private static boolean isControl(String bow, List<Cell> before, List<Cell> after) {
    Set<String> then = states(bow, before);
    Set<String> later = states(bow, after);
    return then.size() == 1 && then.equals(later);
  }

  private static Set<String> states(String bow, List<Cell> cells) {
    return cells.stream()
        .filter(cell -> cell.name().bow().equals(bow))
        .map(cell -> cell.name().state())
        .collect(Collectors.toSet());
  }
}
