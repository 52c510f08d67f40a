package castwell.capture.season;

import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellSums;
import castwell.analysis.season.Covariate;
import castwell.analysis.season.Priors;
import castwell.analysis.season.Season;
import castwell.analysis.season.SeasonCell;
import castwell.analysis.season.SessionDays;
import castwell.analysis.season.StateCurve;
import castwell.analysis.season.Today;
import castwell.analysis.uncertainty.Quantity;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** All bow states that were shot, by one fit over all sessions. */
public final class KnownSeason {
  private final SeasonCells cells;
  private final List<Covariate> conditions;
  private final Season season;

  private final Today today;
  private List<SessionDays.Day> days = List.of();

  /** By state, the first session's cells first. */
  private final Map<String, List<SeasonCell>> byState = new HashMap<>();

  private final boolean areDaysShared;

  /**
   * What a bow did in the last session that it was shot in.
   *
   * @param curve as if nothing differed from day to day: today, with these arrows
   */
  public record LastDay(String session, StateCurve curve) {}

  KnownSeason(SeasonCells cells, List<Covariate> conditions, Season season) {
    this.cells = cells;
    this.conditions = conditions;
    this.season = season;
    today = Today.of(cells.cells(), Priors.ASSUMED);
    cells
        .cells()
        .forEach(cell -> byState.computeIfAbsent(cell.state(), s -> new ArrayList<>()).add(cell));
    Map<String, Set<String>> bows = new HashMap<>();
    cells
        .cells()
        .forEach(
            cell -> bows.computeIfAbsent(cell.session(), s -> new HashSet<>()).add(cell.bow()));
    areDaysShared = bows.values().stream().anyMatch(together -> together.size() > 1);
  }

  /** The fit, for what is asked of several states at once. */
  public Season season() {
    return season;
  }

  /** What a bow does in a state on any day; empty where no shot of it counts. */
  public Optional<StateCurve> curve(String bow, String state) {
    String name = SeasonCells.state(bow, state);
    return byState.containsKey(name) ? Optional.of(season.state(name)) : Optional.empty();
  }

  /**
   * The same days with some of the cells alone, whose bow states may be called otherwise, as for
   * two sessions of one state that are compared.
   *
   * @param state the state's name, by cell
   */
  public Season among(Predicate<SeasonCell> wanted, Function<SeasonCell, String> state) {
    List<SeasonCell> some =
        cells.cells().stream().filter(wanted).map(cell -> cell.inState(state.apply(cell))).toList();
    return Season.fit(some, conditions, Priors.ASSUMED, season.grid()).sharing(shared(wanted));
  }

  /** What errors that cells share do to some of them. */
  private List<double[]> shared(Predicate<SeasonCell> wanted) {
    List<SeasonCell> all = cells.cells();
    int[] places = IntStream.range(0, all.size()).filter(c -> wanted.test(all.get(c))).toArray();
    return cells.shared().stream()
        .map(error -> Arrays.stream(places).mapToDouble(c -> error[c]).toArray())
        .toList();
  }

  /**
   * What each session did to all its bows, in the order in which they began. It takes a moment with
   * very many cells, so it is worked out once.
   */
  public synchronized List<SessionDays.Day> days() {
    if (days.isEmpty()) {
      days = season.days();
    }
    return days;
  }

  /** What the weather does to all bows, as far as enough sessions tell it. */
  public List<Covariate> conditions() {
    return conditions.stream().filter(Covariate::isTold).toList();
  }

  /**
   * The mean log speed of a cell, today with this arrow: by the scatter of all the bow's shots,
   * with what the session's set-up adds. Empty where no shot of it counts.
   */
  public Optional<Quantity> today(CellName name) {
    return of(name.bow(), name.state()).stream()
        .filter(cell -> cell.session().equals(name.session()) && cell.arrow().equals(name.arrow()))
        .findFirst()
        .map(today::logSpeed);
  }

  /**
   * One bow's log speed less another's in one session, over the arrows that both shot; empty
   * without any.
   */
  public Optional<Quantity> differenceToday(
      String bow, String state, String other, String otherState, String session) {
    return today.difference(
        SeasonCells.state(bow, state), SeasonCells.state(other, otherState), session);
  }

  /**
   * Cells of a session that nothing there could judge, and that all others speak against: they
   * count for that day alone.
   */
  public List<CellSums> leftOut(String session) {
    return cells.leftOut().stream().filter(cell -> cell.name().session().equals(session)).toList();
  }

  /** How a state is called in the fit, and in {@link #among}. */
  public static String name(String bow, String state) {
    return SeasonCells.state(bow, state);
  }

  /** Every cell that it was fitted to, the first session's first, with the speeds that it took. */
  public List<CellSums> sums() {
    return cells.sums();
  }

  /**
   * The relative standard uncertainty that a session's own set-up has as a rule: the root mean
   * square over all sessions; 0 where they all share theirs.
   */
  public double setUpU() {
    Map<String, Double> squares = new HashMap<>();
    cells.cells().forEach(cell -> squares.put(cell.session(), cell.setUpU() * cell.setUpU()));
    return Math.sqrt(
        squares.values().stream().mapToDouble(Double::doubleValue).average().orElse(0));
  }

  /** In how many sessions a bow was shot in a state. */
  public int sessions(String bow, String state) {
    return (int) of(bow, state).stream().map(SeasonCell::session).distinct().count();
  }

  /** What it did in the last of them. */
  public Optional<LastDay> lastDay(String bow, String state) {
    List<SeasonCell> all = of(bow, state);
    if (all.isEmpty()) {
      return Optional.empty();
    }
    String last = all.get(all.size() - 1).session();
    String name = SeasonCells.state(bow, state);
    Predicate<SeasonCell> isOfToday =
        cell -> cell.state().equals(name) && cell.session().equals(last);
    List<SeasonCell> today = all.stream().filter(isOfToday).toList();
    Season alone = Season.ofOneDay(today, Priors.ASSUMED).sharing(shared(isOfToday));
    return Optional.of(new LastDay(last, alone.state(name)));
  }

  private List<SeasonCell> of(String bow, String state) {
    return byState.getOrDefault(SeasonCells.state(bow, state), List.of());
  }

  /** Whether the bow's speeds are those at the bow, not those at the gates. */
  public boolean isAtBow(String bow) {
    return cells.isAtBow(bow);
  }

  /** Whether any session had two bows, without which a day can't be told from a bow's own. */
  public boolean areDaysShared() {
    return areDaysShared;
  }
}
