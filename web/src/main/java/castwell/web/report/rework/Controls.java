package castwell.web.report.rework;

import castwell.analysis.cell.CellSums;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.season.KnownSeason;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** The bows left as they were: shot in one state, in a session of either side. */
final class Controls {
  private final Sides sides;
  private final Map<String, List<CellSums>> others = new LinkedHashMap<>();

  Controls(Sides sides, KnownSeason season) {
    this.sides = sides;
    season.sums().stream()
        .collect(
            Collectors.groupingBy(
                cell -> cell.name().bow(), LinkedHashMap::new, Collectors.toList()))
        .forEach(others::put);
    others.remove(sides.before().state().bow());
  }

  /** All that there are; one that was shot in a session of both sides alone tells nothing. */
  List<Pair> all() {
    return others.keySet().stream()
        .map(this::pair)
        .filter(pair -> !pair.before().isEmpty() && !pair.before().equals(pair.after()))
        .toList();
  }

  /**
   * @param bows by their own names
   * @throws Refused for one that is none
   */
  List<Pair> named(Collection<String> bows) {
    return bows.stream().distinct().map(this::named).toList();
  }

  private Pair named(String bow) {
    if (bow.equals(sides.before().state().bow())) {
      throw Refused.of(Why.INVALID, "refused.own_control");
    }
    List<CellSums> cells = others.getOrDefault(bow, List.of());
    for (Side side : List.of(sides.before(), sides.after())) {
      if (states(cells, side).isEmpty()) {
        throw SideFinder.notShot(bow, side.name(), Pair.sessions(cells));
      }
    }
    Pair pair = pair(bow);
    if (pair.before().isEmpty()) {
      String later = states(cells, sides.after()).stream().max(String::compareTo).orElseThrow();
      throw Refused.of(Why.INVALID, "refused.changed_control", bow, later);
    }
    return pair;
  }

  /** Nothing on both sides where it was in no state on both. */
  private Pair pair(String bow) {
    List<CellSums> cells = others.get(bow);
    Set<String> states = states(cells, sides.before());
    states.retainAll(states(cells, sides.after()));
    return new Pair(bow, of(cells, sides.before(), states), of(cells, sides.after(), states));
  }

  private static Set<String> states(List<CellSums> cells, Side side) {
    Set<String> sessions = side.sessions();
    return cells.stream()
        .filter(cell -> sessions.contains(cell.name().session()))
        .map(cell -> cell.name().state())
        .collect(Collectors.toSet());
  }

  private static List<CellSums> of(List<CellSums> cells, Side side, Set<String> states) {
    Set<String> sessions = side.sessions();
    return cells.stream()
        .filter(cell -> sessions.contains(cell.name().session()))
        .filter(cell -> states.contains(cell.name().state()))
        .toList();
  }
}
