package castwell.capture.cell;

import castwell.analysis.air.AtBow;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellSums;
import castwell.analysis.cell.SetUp;
import castwell.analysis.compare.PooledSpread;
import castwell.capture.store.Cells.Row;
import castwell.capture.store.Cells.Scatter;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.capture.store.Weather.Air;
import castwell.capture.view.StateName;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;

/**
 * The sums of cells without strays: from the store where the cells are made, and from the shots
 * where they aren't.
 */
public final class CellLedger {
  /**
   * The number of the rules by which strays are found and speeds are taken to the bow. Raise it
   * whenever those rules change, and all cells are made anew.
   */
  private static final int RULES = 3;

  private final Transaction t;
  private final ZoneId zone;
  private final CellReader reader;
  private Optional<List<Session>> unmade = Optional.empty();
  private final Map<Instant, String> stateNames = new HashMap<>();
  private final Map<Long, String> bows = new HashMap<>();
  private final Map<Long, Rack.Arrow> arrows = new HashMap<>();

  public CellLedger(Transaction t, ZoneId zone) {
    this.t = t;
    this.zone = zone;
    this.reader = new CellReader(t, zone);
    t.rack().bowNames().forEach(bow -> bows.put(bow.id(), bow.name()));
    t.rack().arrows().forEach(arrow -> arrows.put(arrow.id(), arrow));
  }

  /**
   * Makes the cells that are missing, one session at a time, so that shots that come meanwhile
   * hardly have to wait.
   */
  public static void make(Store store, ZoneId zone, BooleanSupplier enough) {
    for (Session session : store.read(t -> t.cells().unmade(RULES))) {
      if (enough.getAsBoolean()) {
        return;
      }
      store.writing(
          t ->
              t.cells()
                  .make(
                      session.id(),
                      RULES,
                      t.weather().ofSession(session.name()),
                      new CellLedger(t, zone).rows(session)));
    }
  }

  /**
   * The names of the sessions whose stored cells differ from what their shots give; there should be
   * none.
   */
  public static List<String> wrong(Store store, ZoneId zone) {
    return store.read(
        t -> {
          CellLedger ledger = new CellLedger(t, zone);
          return t.cells().made(RULES).stream()
              .filter(
                  session ->
                      !t.cells().ofSession(session.id()).equals(Set.copyOf(ledger.rows(session))))
              .map(Session::name)
              .toList();
        });
  }

  /** The cells of every bow state, over all sessions. */
  public List<CellSums> all() {
    List<CellSums> all = new ArrayList<>();
    t.cells().sums(RULES).forEach(row -> all.add(sums(row)));
    unmade().forEach(session -> all.addAll(fromShots(session)));
    return all;
  }

  /** Every session's cells with shots that count, the first session begun first. */
  public List<CellSums> bySession() {
    List<CellSums> cells = new ArrayList<>();
    t.cells().bySession(RULES).forEach(row -> cells.add(sums(row)));
    unmade().forEach(session -> cells.addAll(fromShots(session)));
    cells.removeIf(CellSums::isEmpty);
    return unmade().isEmpty() ? cells : inOrder(cells);
  }

  /** The air of every session that had a sensor, by the session's name. */
  public Map<String, Air> airs() {
    Map<String, Air> airs = t.cells().airs(RULES);
    unmade().forEach(session -> airs.put(session.name(), t.weather().ofSession(session.name())));
    return airs;
  }

  private List<CellSums> inOrder(List<CellSums> cells) {
    Map<String, Integer> places = new HashMap<>();
    t.sessions().all().forEach(session -> places.put(session.name(), -places.size()));
    return cells.stream()
        .sorted(Comparator.comparing(cell -> places.get(cell.name().session())))
        .toList();
  }

  /** Whether the cells of all sessions are made. */
  public boolean isWhole() {
    return unmade().isEmpty();
  }

  /** The cells of one bow state, over all sessions. */
  public List<CellSums> of(BowState state) {
    List<CellSums> all = new ArrayList<>();
    t.cells().sums(RULES, state.bowId(), state.since()).forEach(row -> all.add(sums(row)));
    unmade(state.bow()).stream()
        .filter(cell -> cell.name().state().equals(name(state.since())))
        .forEach(all::add);
    return all;
  }

  /** The shooter's own spread, from the sessions in which the bow was shot in that state. */
  public PooledSpread spread(BowState state) {
    Scatter scatter = t.cells().scatter(RULES, state.bowId(), state.since());
    double squares = scatter.sumSquares();
    int degrees = scatter.degreesOfFreedom();
    for (Session session : unmade()) {
      List<CellSums> cells = fromShots(session);
      boolean wasShot =
          cells.stream()
              .anyMatch(
                  cell ->
                      cell.name().bow().equals(state.bow())
                          && cell.name().state().equals(name(state.since())));
      if (wasShot) {
        squares += cells.stream().mapToDouble(CellSums::sumSquares).filter(Double::isFinite).sum();
        degrees += cells.stream().mapToInt(cell -> Math.max(0, cell.n() - 1)).sum();
      }
    }
    return PooledSpread.of(squares, degrees);
  }

  /** The cells of a bow in all its states, session by session, the first session first. */
  public List<CellSums> ofBow(Rack.Named bow, int most) {
    List<CellSums> all = new ArrayList<>();
    List<Row> made = t.cells().ofBow(RULES, bow.id(), most);
    for (int i = made.size() - 1; i >= 0; i--) {
      all.add(sums(made.get(i)));
    }
    all.addAll(unmade(bow.name()));
    return all;
  }

  /**
   * The sessions without made cells. They are looked up once, since they can't change while the
   * transaction lasts.
   */
  private List<Session> unmade() {
    if (unmade.isEmpty()) {
      unmade = Optional.of(t.cells().unmade(RULES));
    }
    return unmade.get();
  }

  private List<CellSums> unmade(String bow) {
    return unmade().stream()
        .flatMap(session -> fromShots(session).stream())
        .filter(cell -> cell.name().bow().equals(bow))
        .toList();
  }

  private List<CellSums> fromShots(Session session) {
    return reader.ofSession(session.name()).cells().stream().map(CellSums::of).toList();
  }

  private String name(Instant since) {
    return stateNames.computeIfAbsent(since, begun -> StateName.of(begun, zone));
  }

  private CellSums sums(Row row) {
    Rack.Arrow arrow = arrows.get(row.arrowId());
    return new CellSums(
        new CellName(bows.get(row.bowId()), name(row.since()), arrow.name(), row.session()),
        arrow.massKg(),
        new SetUp(row.setUp(), row.setUpU()),
        row.n(),
        row.meanMps(),
        row.sumSquares(),
        row.slowestMps(),
        row.fastestMps(),
        row.gatesMeanSquare(),
        row.setAside(),
        new AtBow(row.drag()));
  }

  private List<Row> rows(Session session) {
    return reader.ofSession(session.name()).cells().stream().map(this::row).toList();
  }

  private Row row(Cell cell) {
    CellSums sums = CellSums.of(cell);
    Rack.Named bow = t.rack().bow(cell.name().bow()).orElseThrow();
    Instant since =
        t.rack().states(bow.id()).stream()
            .map(BowState::since)
            .filter(begun -> name(begun).equals(cell.name().state()))
            .findFirst()
            .orElseThrow();
    long arrow = t.rack().arrow(cell.name().arrow()).map(Rack.Named::id).orElseThrow();
    return new Row(
        cell.name().session(),
        bow.id(),
        since,
        arrow,
        sums.setUp().name(),
        sums.setUp().relativeU(),
        sums.n(),
        sums.meanMps(),
        sums.sumSquares(),
        sums.slowestMps(),
        sums.fastestMps(),
        sums.gatesMeanSquare(),
        sums.setAside(),
        sums.atBow().share());
  }
}
