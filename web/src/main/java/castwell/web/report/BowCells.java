package castwell.web.report;

import castwell.analysis.bow.BowSums;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellSums;
import castwell.capture.cell.CellLedger;
import castwell.capture.cell.CellReader;
import castwell.capture.cell.SessionCells;
import castwell.capture.command.BowCommands;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.season.KnownSeason;
import castwell.capture.season.SeasonLedger;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.capture.view.StateName;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Bows with their states and what was shot with them. */
public final class BowCells {
  private static final int LAST_CELLS = 60;

  private final Transaction transaction;
  private final ZoneId zone;
  private final CellReader cells;
  private final CellLedger ledger;
  private final Optional<KnownSeason> season;

  /** A bow as it is now, with what it shot so; without any shot there is no day. */
  public record Now(BowState state, String stateName, BowSums cells, Optional<AnyDay> anyDay) {}

  /** A bow in one state, with its cells over all sessions, strays set aside. */
  public record Stand(BowState state, String stateName, List<SessionCells> sessions) {

    public BowSums cells() {
      return BowSums.of(state.bow() + ", " + stateName, shot());
    }

    public List<Cell> shot() {
      return sessions.stream()
          .flatMap(session -> session.cells().stream())
          .filter(this::isOfState)
          .toList();
    }

    boolean isOfState(Cell cell) {
      return cell.name().bow().equals(state.bow()) && cell.name().state().equals(stateName);
    }
  }

  public BowCells(Transaction transaction, ZoneId zone) {
    this.transaction = transaction;
    this.zone = zone;
    this.cells = new CellReader(transaction, zone);
    this.ledger = new CellLedger(transaction, zone);
    this.season = SeasonLedger.of(transaction, zone);
  }

  public Transaction transaction() {
    return transaction;
  }

  public CellReader cells() {
    return cells;
  }

  public Rack.Named bow(String name) {
    return BowCommands.bow(transaction, name);
  }

  /** The names of a bow's states, the first first. */
  public List<String> states(Rack.Named bow) {
    return transaction.rack().states(bow.id()).stream().map(this::name).toList();
  }

  /** The state that it is in now. */
  public BowState now(Rack.Named bow) {
    List<BowState> states = transaction.rack().states(bow.id());
    return states.get(states.size() - 1);
  }

  /** A state by its name. */
  public BowState state(Rack.Named bow, String name) {
    return transaction.rack().states(bow.id()).stream()
        .filter(state -> name(state).equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                Refused.of(
                    Why.NOT_FOUND,
                    "refused.no_state",
                    bow.name(),
                    name,
                    String.join(", ", states(bow))));
  }

  public String name(BowState state) {
    return StateName.of(state.since(), zone);
  }

  /** Every bow of the rack as it is now, in the order entered. */
  public List<Now> now() {
    Map<CellState, List<CellSums>> byState =
        ledger.all().stream()
            .collect(
                Collectors.groupingBy(
                    cell -> new CellState(cell.name().bow(), cell.name().state())));
    return transaction.rack().bowNames().stream()
        .map(this::now)
        .map(
            state -> {
              CellState named = new CellState(state.bow(), name(state));
              List<CellSums> shot = byState.getOrDefault(named, List.of());
              BowSums sums = asInSeason(state, new BowSums(state.bow(), shot));
              return new Now(state, named.state(), sums, AnyDay.of(season, state, named.state()));
            })
        .toList();
  }

  /** All bows by all sessions; empty where no shot counts. */
  public Optional<KnownSeason> season() {
    return season;
  }

  /** The same sums, at the gates where the season has the bow's speeds there. */
  public BowSums asInSeason(BowState state, BowSums sums) {
    return season.filter(known -> !known.isAtBow(state.bow())).isPresent() ? sums.atGates() : sums;
  }

  /** One for all that is asked here, since it reads each session whose cells are unmade once. */
  public CellLedger ledger() {
    return ledger;
  }

  private record CellState(String bow, String state) {}

  /** The names of the last sessions in which a bow was shot in a state; not of very many. */
  public List<String> lastSessions(BowState state) {
    return ledger.ofBow(new Rack.Named(state.bowId(), state.bow()), LAST_CELLS).stream()
        .filter(cell -> cell.name().state().equals(name(state)) && !cell.isEmpty())
        .map(cell -> cell.name().session())
        .distinct()
        .toList();
  }

  public Stand stand(BowState state) {
    return new Stand(state, name(state), cells.ofBow(state.bowId()));
  }
}
