package castwell.web.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.air.AtBow;
import castwell.analysis.cell.CellSums;
import castwell.capture.cell.CellLedger;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.ManyShots;
import castwell.capture.store.Rack;
import castwell.capture.store.Store;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import castwell.web.report.bow.BowStudy;
import castwell.web.report.ranking.Standings;
import castwell.web.report.ranking.Standings.Standing;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is reckoned from the sums that the store keeps is what the shots themselves say. */
class CellLedgerTest {
  private static final ZoneId ZONE = ZoneOffset.UTC;
  private static final ReportRequest USUAL = ReportRequest.of(10, 0.5);
  private static final Instant NOW = Instant.parse("2026-11-01T12:00:00Z");
  private static final long SEED = Seed.of(CellLedgerTest.class);

  /** Sums of squares round otherwise than the shots one by one; a shot too many is far more. */
  private static final double ROUNDING_MPS = 1e-7;

  /** How far the search for how days differ is carried. */
  private static final double FITTED_MPS = 1e-4;

  @TempDir Path folder;
  private Store store;

  @BeforeEach
  void fill() {
    ManyShots.fill(folder, 3_000, SEED);
    store = Store.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private Standings standings() {
    return store.read(t -> Standings.of(t, ZONE, USUAL));
  }

  private void make() {
    CellLedger.make(store, ZONE, () -> false);
  }

  private int unmade() {
    return store.read(t -> t.cells().unmade(3).size());
  }

  private static void areTheSame(Standings made, Standings shots) {
    assertThat(made.bows()).hasSameSizeAs(shots.bows());
    for (int i = 0; i < made.bows().size(); i++) {
      Standing a = made.bows().get(i);
      Standing b = shots.bows().get(i);
      assertThat(a.n()).isEqualTo(b.n());
      assertThat(a.cast().isPresent()).isEqualTo(b.cast().isPresent());
      if (a.cast().isPresent()) {
        var one = a.cast().get().anyDayMps();
        var other = b.cast().get().anyDayMps();
        assertThat(one.value()).isCloseTo(other.value(), within(FITTED_MPS));
        assertThat(one.interval().low()).isCloseTo(other.interval().low(), within(10 * FITTED_MPS));
      }
    }
    assertThat(made.letters()).isEqualTo(shots.letters());
  }

  @Test
  void sumsSayWhatTheShotsSay() {
    Standings shots = standings();
    make();
    assertThat(unmade()).isZero();
    areTheSame(standings(), shots);
    assertThat(CellLedger.wrong(store, ZONE)).isEmpty();
  }

  @Test
  void whateverChangesAShotUnmakesItsSessionAlone() {
    String shot = "gate-1.1.1501";
    long passage = store.read(t -> t.passages().byShotId(shot).orElseThrow().id());
    long bow = store.read(t -> t.rack().bow("bow 7").orElseThrow().id());
    List<Consumer<Transaction>> changes =
        List.of(
            t -> t.decisions().decide(passage, Decided.SET_ASIDE, "plucked", NOW, "test"),
            t ->
                t.tags()
                    .tagShot(
                        passage,
                        new Tags.Pair(OptionalLong.of(bow), OptionalLong.of(1)),
                        NOW,
                        "test",
                        ""),
            t -> t.figures().put(t.figures().of(passage, 1).orElseThrow()));
    for (Consumer<Transaction> change : changes) {
      make();
      store.writing(change);
      assertThat(unmade()).isEqualTo(1);
      Standings partly = standings();
      make();
      areTheSame(standings(), partly);
    }
  }

  /** Whose speeds are those at the bow from then on: every session that it was shot in is anew. */
  @Test
  void anArrowsDiameterUnmakesItsSessionsAndTakesItsSpeedsToTheBow() {
    make();
    Rack.Arrow arrow = store.read(t -> t.rack().arrows()).get(0);
    List<CellSums> before = cellsWith(arrow);
    Measures<ArrowMeasure> wide = arrow.measures().with(ArrowMeasure.DIAMETER, 0.0087);
    store.writing(t -> t.rack().enterArrow(arrow.id(), arrow.massKg(), wide, NOW));
    assertThat(unmade()).isPositive();
    List<CellSums> shots = cellsWith(arrow);
    make();
    List<CellSums> made = cellsWith(arrow);

    assertThat(before).isNotEmpty().noneMatch(cell -> cell.atBow().isKnown());
    assertThat(made).hasSameSizeAs(before).allMatch(cell -> cell.atBow().isKnown());
    for (int i = 0; i < made.size(); i++) {
      AtBow atBow = made.get(i).atBow();
      double metres = 2 + 0.6 / 2;
      // Drag.lossPerMetre, worked out apart: rho 2.05 pi / 4 d^2 / (2 m)
      double lost = 1.2 * 2.05 * Math.PI / 4 * 0.0087 * 0.0087 / (2 * arrow.massKg()) * metres;
      assertThat(atBow.share()).isCloseTo(lost, within(lost * 1e-9));
      assertThat(made.get(i).atGates().meanMps())
          .isCloseTo(before.get(i).meanMps(), within(ROUNDING_MPS));
      assertThat(made.get(i).n()).isEqualTo(before.get(i).n());
    }
    assertThat(shots.stream().mapToInt(CellSums::n).sum())
        .isEqualTo(made.stream().mapToInt(CellSums::n).sum());
    assertThat(CellLedger.wrong(store, ZONE)).isEmpty();
  }

  /** Of every bow, in the order of its name. */
  private List<CellSums> cellsWith(Rack.Arrow arrow) {
    return store.read(t -> new CellLedger(t, ZONE).all()).stream()
        .filter(cell -> cell.name().arrow().equals(arrow.name()) && !cell.isEmpty())
        .sorted(
            Comparator.comparing((CellSums cell) -> cell.name().bow())
                .thenComparing(cell -> cell.name().state())
                .thenComparing(cell -> cell.setUp().name()))
        .toList();
  }

  @Test
  void aNewStateUnmakesAllSessionsOfItsBow() {
    make();
    Rack.Named bow = store.read(t -> t.rack().bow("bow 7").orElseThrow());
    Instant since = Instant.parse("1996-04-20T00:00:00Z");
    store.writing(t -> t.rack().addState(bow.id(), since, 200, 0.7, Measures.none(), "again", NOW));
    assertThat(unmade()).isEqualTo(3);
    Optional<String> state = Optional.of("1996-04-20");
    assertThat(store.read(t -> BowStudy.of(t, ZONE, "bow 7", state, USUAL)).cells().shots())
        .isPositive();
  }
}
