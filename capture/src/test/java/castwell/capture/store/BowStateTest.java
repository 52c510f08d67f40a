package castwell.capture.store;

import static castwell.capture.store.Rows.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A bow changes in time, an arrow is only known better: what holds for a shot. */
class BowStateTest {
  private static final Instant REWORKED = NOON.plusSeconds(3600);

  private static final Measures<ArrowMeasure> THIN =
      Measures.<ArrowMeasure>none().with(ArrowMeasure.DIAMETER, 0.008);

  @TempDir Path folder;
  private Store store;
  private long bow;
  private int edge = 1;

  @BeforeEach
  void open() {
    store = Store.open(folder);
    bow = store.write(t -> t.rack().addBow("heron", NOON));
    state(NOON, 230, "new");
    state(REWORKED, 222, "tips lightened");
  }

  @AfterEach
  void close() {
    store.close();
  }

  private void state(Instant since, double drawWeightN, String done) {
    store.writing(
        t -> t.rack().addState(bow, since, drawWeightN, 0.686, Measures.none(), done, NOON));
  }

  private void holdsAt(Instant at, double drawWeightN) {
    BowState state = store.read(t -> t.rack().state(bow, at)).orElseThrow();
    assertThat(state.drawWeightN()).as("asked for at " + at).isEqualTo(drawWeightN);
    Shot shot = shot(at, new Tags.Pair(OptionalLong.of(bow), OptionalLong.empty()));
    assertThat(shot.bow()).as("of a shot at " + at).contains(state);
  }

  private Shot shot(Instant fired, Tags.Pair tags) {
    return store.write(
        t -> {
          Passages.Row row = Rows.shoot(t, edge, fired, true);
          t.tags().tagShot(row.id(), tags, fired, "capture", "");
          edge += 4;
          return t.shots().byPassage(row.id()).orElseThrow();
        });
  }

  @Test
  void beforeTheFirstTheFirstHolds() {
    holdsAt(NOON.minusSeconds(86400), 230);
    holdsAt(NOON.minusMillis(1), 230);
  }

  @Test
  void eachHoldsFromItsInstantOn() {
    holdsAt(NOON, 230);
    holdsAt(REWORKED.minusMillis(1), 230);
    holdsAt(REWORKED, 222);
    holdsAt(REWORKED.plusSeconds(1_000_000), 222);
  }

  @Test
  void oneEnteredForTheSameInstantCorrectsIt() {
    state(NOON, 231, "new, weighed again");
    holdsAt(NOON.minusSeconds(5), 231);
    holdsAt(NOON, 231);
    holdsAt(REWORKED, 222);
    assertThat(Rows.list(store, t -> t.rack().states(bow)))
        .extracting(BowState::drawWeightN)
        .containsExactly(231.0, 222.0);
  }

  @Test
  void oneEnteredAfterwardsForBetweenHoldsBetween() {
    state(NOON.plusSeconds(1800), 226, "tiller evened");
    holdsAt(NOON.plusSeconds(1799), 230);
    holdsAt(NOON.plusSeconds(1800), 226);
    holdsAt(REWORKED, 222);
  }

  @Test
  void everyMeasureIsReadBackAsItWasTaken() {
    Measures<BowMeasure> taken =
        Measures.of(
            BowMeasure.values(),
            measure -> OptionalDouble.of(0.01 + measure.ordinal()),
            measure -> Optional.of("some " + measure));
    store.writing(t -> t.rack().addState(bow, REWORKED, 222, 0.686, taken, "measured", NOON));
    assertThat(Rows.maybe(store, t -> t.rack().state(bow, REWORKED)).orElseThrow().measures())
        .isEqualTo(taken);
    holdsAt(REWORKED, 222);
    Measures<ArrowMeasure> told =
        Measures.of(
            ArrowMeasure.values(),
            measure -> OptionalDouble.of(0.01 + measure.ordinal()),
            measure -> Optional.of("some " + measure));
    long arrow = store.write(t -> t.rack().addArrow("reed", NOON));
    enter(arrow, 0.030, told);
    Shot shot = shot(NOON, new Tags.Pair(OptionalLong.of(bow), OptionalLong.of(arrow)));
    assertThat(shot.arrow().orElseThrow().measures()).isEqualTo(told);
    assertThat(Rows.list(store, t -> t.rack().arrows()).get(0).measures()).isEqualTo(told);
  }

  @Test
  void anotherBowsStatesAreItsOwn() {
    long other = store.write(t -> t.rack().addBow("wren", NOON));
    store.writing(t -> t.rack().addState(other, NOON, 150, 0.6, Measures.none(), "", NOON));
    holdsAt(NOON, 230);
    assertThat(Rows.maybe(store, t -> t.rack().state(other, REWORKED)).orElseThrow().bow())
        .isEqualTo("wren");
  }

  @Test
  void namesAreFoundWhateverTheirCase() {
    assertThat(Rows.maybe(store, t -> t.rack().bow("HERON")))
        .contains(new Rack.Named(bow, "heron"));
    assertThat(Rows.maybe(store, t -> t.rack().bow("egret"))).isEmpty();
  }

  @Test
  void anArrowEnteredAgainHoldsForItsEarlierShotsToo() {
    long arrow = store.write(t -> t.rack().addArrow("reed", NOON));
    enter(arrow, 0.030, THIN.with(ArrowMeasure.LENGTH, 0.74));
    Shot early = shot(NOON, new Tags.Pair(OptionalLong.empty(), OptionalLong.of(arrow)));
    assertThat(early.arrow().orElseThrow().massKg()).isEqualTo(0.030);
    enter(arrow, 0.0312, THIN);
    Arrow now = new Arrow(arrow, "reed", 0.0312, THIN);
    assertThat(Rows.list(store, t -> t.rack().arrows())).containsExactly(now);
    assertThat(Rows.maybe(store, t -> t.shots().byPassage(early.passageId())).orElseThrow().arrow())
        .contains(now);
  }

  private void enter(long arrow, double massKg, Measures<ArrowMeasure> measures) {
    store.writing(t -> t.rack().enterArrow(arrow, massKg, measures, NOON));
  }
}
