package castwell.web.report.rework;

import castwell.analysis.air.AtBow;
import castwell.analysis.bow.BowSums;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellShot;
import castwell.analysis.cell.SetUp;
import castwell.capture.cell.SessionCells;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * What one bow shot on one day, or in one session, in one state.
 *
 * @param name as it was asked for
 * @param state the bow's then
 * @param cells one an arrow
 */
public record Day(String name, String bow, String state, Set<String> sessions, List<Cell> cells) {

  /** As the fits take them in. */
  public BowSums bowCells() {
    return BowSums.of(bow + " on " + name, cells);
  }

  /** Of several states on that day the one that is asked for. */
  enum Which {
    EARLIEST,
    LATEST
  }

  /**
   * @param sessions all in which the bow was shot
   * @param name a session's, or a date
   * @param otherwise what is meant when nothing was shot then: a state of the bow's, say
   */
  static Day of(
      String bow,
      List<SessionCells> sessions,
      String name,
      Predicate<Cell> otherwise,
      Which which,
      ZoneId zone) {
    List<Cell> all =
        sessions.stream()
            .flatMap(session -> session.cells().stream())
            .filter(cell -> cell.name().bow().equals(bow) && !cell.shots().isEmpty())
            .toList();
    List<Cell> then =
        all.stream()
            .filter(cell -> cell.name().session().equals(name) || isOn(cell, name, zone))
            .toList();
    List<Cell> cells = then.isEmpty() ? all.stream().filter(otherwise).toList() : then;
    String state =
        cells.stream()
            .map(cell -> cell.name().state())
            .reduce((a, b) -> (a.compareTo(b) <= 0) == (which == Which.EARLIEST) ? a : b)
            .orElseThrow(() -> notShot(bow, sessions, name));
    List<Cell> ofState = cells.stream().filter(cell -> cell.name().state().equals(state)).toList();
    Set<String> names = new LinkedHashSet<>();
    ofState.forEach(cell -> names.add(cell.name().session()));
    return new Day(name, bow, state, names, byArrow(ofState));
  }

  private static boolean isOn(Cell cell, String date, ZoneId zone) {
    long millis = Math.round(cell.shots().get(0).firedS() * 1e3);
    return Instant.ofEpochMilli(millis).atZone(zone).toLocalDate().toString().equals(date);
  }

  private static Refused notShot(String bow, List<SessionCells> sessions, String name) {
    String when = String.join(", ", sessions.stream().map(SessionCells::session).toList());
    return when.isEmpty()
        ? Refused.of(Why.NOT_FOUND, "refused.never_shot", bow, name)
        : Refused.of(Why.NOT_FOUND, "refused.not_shot_on", bow, name, when);
  }

  /** Sessions of one day are one: the shots of an arrow together, over the worse of two set-ups. */
  private static List<Cell> byArrow(List<Cell> cells) {
    Map<String, Cell> byArrow = new LinkedHashMap<>();
    cells.forEach(cell -> byArrow.merge(cell.name().arrow(), cell, Day::together));
    return List.copyOf(byArrow.values());
  }

  private static Cell together(Cell a, Cell b) {
    List<CellShot> shots = new ArrayList<>(a.shots());
    shots.addAll(b.shots());
    var aside = new ArrayList<>(a.setAside());
    aside.addAll(b.setAside());
    boolean areAtBow = a.atBow().isKnown() && b.atBow().isKnown();
    if (!areAtBow && (a.atBow().isKnown() || b.atBow().isKnown())) {
      return together(a.atGates(), b.atGates());
    }
    SetUp setUp = a.setUp().relativeU() >= b.setUp().relativeU() ? a.setUp() : b.setUp();
    return new Cell(a.name(), a.massKg(), setUp, shots, aside, mean(a, b));
  }

  private static AtBow mean(Cell a, Cell b) {
    double shots = Math.max(1, a.shots().size() + b.shots().size());
    return new AtBow(
        (a.shots().size() * a.atBow().share() + b.shots().size() * b.atBow().share()) / shots);
  }
}
