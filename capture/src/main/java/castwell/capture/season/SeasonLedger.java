package castwell.capture.season;

import castwell.analysis.cell.CellSums;
import castwell.analysis.season.Covariate;
import castwell.analysis.season.Priors;
import castwell.analysis.season.Season;
import castwell.analysis.season.VarianceGrid;
import castwell.capture.cell.CellLedger;
import castwell.capture.measure.BowMeasure;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.capture.view.StateName;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** The season of a store: from what is kept where that holds, from all cells where it doesn't. */
public final class SeasonLedger {
  /** The number of the rules by which a season is told. Raise it, and it is told anew. */
  private static final int RULES = 1;

  /** Of logs and weights: what bringing a season up to date leaves out at most. */
  private static final double ALIKE = 3e-3;

  private final Transaction t;
  private final ZoneId zone;
  private final CellLedger ledger;

  private record Made(long changes, VarianceGrid grid) {}

  private SeasonLedger(Transaction t, ZoneId zone) {
    this.t = t;
    this.zone = zone;
    this.ledger = new CellLedger(t, zone);
  }

  /** Empty where no shot counts that has a bow and an arrow. */
  public static Optional<KnownSeason> of(Transaction t, ZoneId zone) {
    SeasonLedger ledger = new SeasonLedger(t, zone);
    Object holdsFor = ledger.ledger.isWhole() ? t.season().changes() : t;
    return t.remembered().value(List.of(holdsFor, zone), ledger::known);
  }

  /**
   * Fits the season and keeps what it told, unless that is done already, or some session's cells
   * are still unmade. Shots that come meanwhile don't have to wait for the fit.
   */
  public static void make(Store store, ZoneId zone) {
    Optional<Made> made = store.read(t -> new SeasonLedger(t, zone).made());
    made.ifPresent(m -> store.writing(t -> t.season().keep(RULES, m.changes(), m.grid())));
  }

  /**
   * How far another day may shift a bow's speed, relatively: as days and bows' own days were found
   * to differ, or as is assumed before any was.
   */
  public static double otherDay(Transaction t) {
    return t.season().last(RULES).map(VarianceGrid::otherDay).orElseGet(Priors.ASSUMED::otherDay);
  }

  /** Whether what is kept differs from what the cells tell; it shouldn't. */
  public static boolean isWrong(Store store, ZoneId zone) {
    return store.read(
        t -> {
          Optional<VarianceGrid> kept = t.season().grid(RULES);
          SeasonLedger ledger = new SeasonLedger(t, zone);
          return kept.isPresent()
              && ledger.ledger.isWhole()
              && !isAlike(kept.get(), ledger.anew().grid());
        });
  }

  private static boolean isAlike(VarianceGrid a, VarianceGrid b) {
    boolean alike = a.size() == b.size();
    for (int g = 0; alike && g < a.size(); g++) {
      alike = Math.abs(a.weights()[g] - b.weights()[g]) < ALIKE;
      for (int p = 0; p < a.mode().length; p++) {
        alike &= Math.abs(a.places()[g][p] - b.places()[g][p]) < ALIKE;
      }
    }
    return alike;
  }

  private Optional<Made> made() {
    if (!ledger.isWhole() || t.season().grid(RULES).isPresent()) {
      return Optional.empty();
    }
    return of(t, zone).map(known -> new Made(t.season().changes(), known.season().grid()));
  }

  private Optional<KnownSeason> known() {
    SeasonCells cells = cells();
    return cells.cells().isEmpty() ? Optional.empty() : Optional.of(fitted(cells));
  }

  private KnownSeason fitted(SeasonCells cells) {
    List<Covariate> conditions = conditions();
    VarianceGrid grid = grid(cells, conditions);
    Season season = Season.fit(cells.cells(), conditions, Priors.ASSUMED, grid);
    return new KnownSeason(cells, conditions, season.sharing(cells.shared()));
  }

  private VarianceGrid grid(SeasonCells cells, List<Covariate> conditions) {
    Optional<VarianceGrid> kept = ledger.isWhole() ? t.season().grid(RULES) : Optional.empty();
    return kept.or(
            () ->
                t.season()
                    .last(RULES)
                    .map(last -> last.upTo(cells.cells(), conditions, Priors.ASSUMED)))
        .orElseGet(() -> Season.fit(cells.cells(), conditions, Priors.ASSUMED).grid());
  }

  private Season anew() {
    return Season.fit(cells().cells(), conditions(), Priors.ASSUMED);
  }

  /** The air's, as far as boards had a sensor. */
  private List<Covariate> conditions() {
    Map<String, Double> celsius = new HashMap<>();
    Map<String, Double> humidityPercent = new HashMap<>();
    ledger
        .airs()
        .forEach(
            (session, air) -> {
              air.celsius().ifPresent(c -> celsius.put(session, c));
              air.relativeHumidity().ifPresent(h -> humidityPercent.put(session, 100 * h));
            });
    return List.of(Covariate.temperature(celsius), Covariate.humidity(humidityPercent));
  }

  private SeasonCells cells() {
    Map<String, String> tunes = tunes();
    Function<CellSums, String> tune = cell -> tunes.get(state(cell));
    List<CellSums> all = ledger.bySession();
    List<CellSums> strays =
        LoneCells.strays(
            all,
            sums -> new SeasonCells(sums, tune, List.of()).cells(),
            cells -> Season.fit(cells, conditions(), Priors.ASSUMED));
    List<CellSums> believed = all.stream().filter(cell -> !strays.contains(cell)).toList();
    return new SeasonCells(believed, tune, strays);
  }

  private static String state(CellSums cell) {
    return SeasonCells.state(cell.name().bow(), cell.name().state());
  }

  /** An arrow does the same on a bow until another string is known of. */
  private Map<String, String> tunes() {
    Map<String, String> tunes = new HashMap<>();
    t.rack()
        .bowNames()
        .forEach(
            bow -> {
              for (BowState state : t.rack().states(bow.id())) {
                OptionalDouble string = state.measures().number(BowMeasure.STRING_MASS);
                String tune = bow.name() + (string.isPresent() ? ", " + string.getAsDouble() : "");
                tunes.put(SeasonCells.state(bow.name(), StateName.of(state.since(), zone)), tune);
              }
            });
    return tunes;
  }
}
