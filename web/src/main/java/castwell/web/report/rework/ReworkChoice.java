package castwell.web.report.rework;

import castwell.analysis.cell.CellSums;
import castwell.capture.season.SeasonLedger;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.web.report.BowCells;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What can be asked of a rework, and what one would ask first: the last one of the bow.
 *
 * @param bows those of the rack
 * @param bow the one looked at, "" on an empty rack
 * @param states those in which it was shot, the first first
 * @param sessions the last ones in which it was, the first first
 * @param before its state before the last in which it was shot, or its first session
 * @param after the last state in which it was shot, or its last session
 * @param others the other bows
 */
public record ReworkChoice(
    List<String> bows,
    String bow,
    List<Option> states,
    List<Option> sessions,
    String before,
    String after,
    List<String> others) {

  /** Of more one chooses by the address. */
  private static final int MOST_SESSIONS = 60;

  /**
   * @param value as it is asked for
   */
  public record Option(String value, String words) {}

  public static ReworkChoice of(Transaction t, ZoneId zone, Optional<String> asked) {
    BowCells bowCells = new BowCells(t, zone);
    List<Rack.Named> all = t.rack().bowNames();
    List<String> bows = all.stream().map(Rack.Named::name).toList();
    if (all.isEmpty()) {
      return new ReworkChoice(bows, "", List.of(), List.of(), "", "", List.of());
    }
    List<CellSums> cells =
        SeasonLedger.of(t, zone).map(season -> season.sums()).orElseGet(List::of);
    Rack.Named bow =
        asked
            .map(bowCells::bow)
            .orElseGet(
                () ->
                    all.stream()
                        .filter(named -> states(bowCells, named, cells).size() > 1)
                        .findFirst()
                        .orElse(all.get(0)));
    List<Option> states = states(bowCells, bow, cells);
    List<Option> sessions = sessions(bow, cells);
    List<Option> first =
        states.size() > 1 ? states.subList(states.size() - 2, states.size()) : sessions;
    return new ReworkChoice(
        bows,
        bow.name(),
        states,
        sessions.subList(Math.max(0, sessions.size() - MOST_SESSIONS), sessions.size()),
        first.isEmpty() ? "" : first.get(0).value(),
        first.isEmpty() ? "" : first.get(first.size() - 1).value(),
        bows.stream().filter(name -> !name.equals(bow.name())).toList());
  }

  private static List<Option> states(BowCells bowCells, Rack.Named bow, List<CellSums> cells) {
    List<Option> states = new ArrayList<>();
    for (BowState state : bowCells.transaction().rack().states(bow.id())) {
      String name = bowCells.name(state);
      boolean wasShot =
          cells.stream()
              .map(CellSums::name)
              .anyMatch(cell -> cell.bow().equals(bow.name()) && cell.state().equals(name));
      if (wasShot) {
        String done = state.done().isBlank() ? "" : ": " + state.done();
        states.add(new Option(SideFinder.STATE + name, name + done));
      }
    }
    return states;
  }

  private static List<Option> sessions(Rack.Named bow, List<CellSums> cells) {
    return cells.stream()
        .map(CellSums::name)
        .filter(cell -> cell.bow().equals(bow.name()))
        .map(cell -> cell.session())
        .distinct()
        .map(session -> new Option(SideFinder.SESSION + session, session))
        .toList();
  }

  /** Whether something can be chosen by that value. */
  public boolean has(String value) {
    return Stream.concat(states.stream(), sessions.stream())
        .anyMatch(option -> option.value().equals(value));
  }

  /** The value of what is asked for by a name alone; the name itself where there is none. */
  public String value(String name) {
    return Stream.of(name, SideFinder.STATE + name, SideFinder.SESSION + name)
        .filter(this::has)
        .findFirst()
        .orElse(name);
  }

  /** Whether there are two things to compare. */
  public boolean isTwice() {
    return states.size() > 1 || sessions.size() > 1;
  }
}
