package castwell.capture.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.season.VarianceGrid;
import castwell.analysis.uncertainty.Estimate;
import castwell.capture.cell.CellLedger;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.ManyShots;
import castwell.capture.store.Store;
import castwell.capture.view.StateName;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is kept of a season says what its shots say, and holds only while they do. */
class SeasonLedgerTest {
  private static final ZoneId ZONE = ZoneOffset.UTC;
  private static final Instant NOW = Instant.parse("2026-01-01T00:00:00Z");
  private static final long SEED = Seed.of(SeasonLedgerTest.class);
  private static final double MASS_KG = 0.03;

  @TempDir Path folder;
  private Store store;

  @BeforeEach
  void fill() {
    ManyShots.fill(folder, 1_500, SEED);
    store = Store.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private void make() {
    CellLedger.make(store, ZONE, () -> false);
    SeasonLedger.make(store, ZONE);
  }

  private boolean isKept() {
    return store.read(t -> t.season().grid(1).isPresent());
  }

  private Estimate speed() {
    return store.read(
        t -> {
          Instant since = t.rack().states(t.rack().bow("bow 7").orElseThrow().id()).get(0).since();
          return SeasonLedger.of(t, ZONE)
              .flatMap(season -> season.curve("bow 7", StateName.of(since, ZONE)))
              .orElseThrow()
              .speedMps(MASS_KG, 0.95);
        });
  }

  /** In m/s, as far as the search for the likeliest place is carried. */
  private static void isTheSame(Estimate a, Estimate b) {
    assertThat(a.value()).isCloseTo(b.value(), within(1e-3));
    assertThat(a.interval().low()).isCloseTo(b.interval().low(), within(1e-3));
    assertThat(a.interval().high()).isCloseTo(b.interval().high(), within(1e-3));
  }

  @Test
  void theKeptSeasonSaysWhatTheShotsSay() {
    Estimate shots = speed();
    assertThat(isKept()).isFalse();
    make();
    assertThat(isKept()).isTrue();
    isTheSame(speed(), shots);
    assertThat(SeasonLedger.isWrong(store, ZONE)).isFalse();
    store.close();
    store = Store.open(folder);
    assertThat(isKept()).isTrue();
    isTheSame(speed(), shots);
  }

  @Test
  void whateverChangesAShotUnmakesTheSeason() {
    make();
    Estimate before = speed();
    long passage = store.read(t -> t.passages().byShotId("gate-1.1.701").orElseThrow().id());
    store.writing(t -> t.decisions().decide(passage, Decided.SET_ASIDE, "plucked", NOW, "test"));
    assertThat(isKept()).isFalse();
    Estimate shots = speed();
    make();
    assertThat(isKept()).isTrue();
    assertThat(shots).isNotEqualTo(before);
    isTheSame(speed(), shots);
    assertThat(SeasonLedger.isWrong(store, ZONE)).isFalse();
  }

  @Test
  void aSeasonThatWasTamperedWithIsFound() {
    make();
    store.writing(
        t -> {
          var grid = t.season().grid(1).orElseThrow();
          double[] mode = grid.mode().clone();
          double[][] places = grid.places().clone();
          places[3] = new double[] {-5, -5, -5};
          t.season().keep(1, t.season().changes(), new VarianceGrid(places, grid.weights(), mode));
        });
    assertThat(SeasonLedger.isWrong(store, ZONE)).isTrue();
  }

  @Test
  void anEmptyStoreHasNone(@TempDir Path other) {
    try (Store empty = Store.open(other)) {
      Optional<KnownSeason> none = empty.read(t -> SeasonLedger.of(t, ZONE));
      assertThat(none).isEmpty();
      SeasonLedger.make(empty, ZONE);
      assertThat(SeasonLedger.isWrong(empty, ZONE)).isFalse();
    }
  }
}
