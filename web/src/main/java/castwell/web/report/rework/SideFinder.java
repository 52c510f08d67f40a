package castwell.web.report.rework;

import castwell.analysis.cell.CellSums;
import castwell.capture.cell.SessionCells;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.season.KnownSeason;
import castwell.capture.store.Rack;
import castwell.web.report.BowCells;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds what is meant by a state, a session or a date of a bow. */
final class SideFinder {
  /** These tell a state from a session of the same name. */
  static final String STATE = "state:";

  static final String SESSION = "session:";

  private final BowCells bowCells;
  private final ZoneId zone;
  private final Rack.Named bow;
  private final List<String> states;
  private final List<CellSums> cells;

  SideFinder(BowCells bowCells, ZoneId zone, Rack.Named bow, KnownSeason season) {
    this.bowCells = bowCells;
    this.zone = zone;
    this.bow = bow;
    states = bowCells.states(bow);
    cells = season.sums().stream().filter(cell -> cell.name().bow().equals(bow.name())).toList();
  }

  /** Where a day had several states, the first is before, and the last is after. */
  Sides sides(String before, String after) {
    return Sides.of(
        side(before, Comparator.reverseOrder()), side(after, Comparator.naturalOrder()));
  }

  private Side side(String name, Comparator<Integer> which) {
    if (name.startsWith(STATE)) {
      return ofState(name, name.substring(STATE.length()));
    }
    if (name.startsWith(SESSION)) {
      return ofSessions(name, Set.of(name.substring(SESSION.length())), which);
    }
    if (cells.stream().anyMatch(cell -> cell.name().state().equals(name))) {
      return ofState(name, name);
    }
    boolean isSession = cells.stream().anyMatch(cell -> cell.name().session().equals(name));
    return ofSessions(name, isSession ? Set.of(name) : onDate(name), which);
  }

  private Side ofState(String name, String state) {
    List<CellSums> shot = cells.stream().filter(cell -> cell.name().state().equals(state)).toList();
    return side(name, state, true, shot);
  }

  private Side ofSessions(String name, Set<String> sessions, Comparator<Integer> which) {
    List<CellSums> shot =
        cells.stream().filter(cell -> sessions.contains(cell.name().session())).toList();
    String state =
        shot.stream()
            .map(cell -> cell.name().state())
            .max(Comparator.comparing(states::indexOf, which))
            .orElseThrow(() -> notShot(name));
    return side(
        name,
        state,
        false,
        shot.stream().filter(cell -> cell.name().state().equals(state)).toList());
  }

  private Side side(String name, String state, boolean isState, List<CellSums> shot) {
    if (shot.isEmpty()) {
      throw notShot(name);
    }
    return new Side(name, bowCells.state(bow, state), state, isState, shot);
  }

  /** The sessions in which the bow was shot that day; one of them may have begun the day before. */
  private Set<String> onDate(String name) {
    try {
      LocalDate date = LocalDate.parse(name);
      Instant from = date.minusDays(1).atStartOfDay(zone).toInstant();
      Instant to = date.plusDays(1).atStartOfDay(zone).toInstant();
      return bowCells.transaction().sessions().named(name, from, to).stream()
          .map(session -> bowCells.cells().ofSession(session.name()))
          .filter(session -> isOn(session, date))
          .map(SessionCells::session)
          .collect(Collectors.toSet());
    } catch (DateTimeParseException e) {
      return Collections.emptySet();
    }
  }

  private boolean isOn(SessionCells session, LocalDate date) {
    return session.cells().stream()
        .filter(cell -> cell.name().bow().equals(bow.name()))
        .flatMap(cell -> cell.shots().stream())
        .anyMatch(
            shot ->
                Instant.ofEpochMilli(Math.round(shot.firedS() * 1e3))
                    .atZone(zone)
                    .toLocalDate()
                    .equals(date));
  }

  private Refused notShot(String name) {
    return notShot(bow.name(), name, Pair.sessions(cells));
  }

  static Refused notShot(String bow, String name, Set<String> sessions) {
    return sessions.isEmpty()
        ? Refused.of(Why.NOT_FOUND, "refused.never_shot", bow, name)
        : Refused.of(Why.NOT_FOUND, "refused.not_shot_on", bow, name, String.join(", ", sessions));
  }
}
