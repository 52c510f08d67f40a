package castwell.capture.store;

import static castwell.capture.store.Rows.NOON;
import static org.assertj.core.api.Assertions.assertThat;

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
        t -> t.rack().addState(bow, since, drawWeightN, 0.686, Rack.Measures.NONE, done, NOON));
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
  void anotherBowsStatesAreItsOwn() {
    long other = store.write(t -> t.rack().addBow("wren", NOON));
    store.writing(t -> t.rack().addState(other, NOON, 150, 0.6, Rack.Measures.NONE, "", NOON));
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
    enter(arrow, 0.030, OptionalDouble.of(0.74));
    Shot early = shot(NOON, new Tags.Pair(OptionalLong.empty(), OptionalLong.of(arrow)));
    assertThat(early.arrow().orElseThrow().massKg()).isEqualTo(0.030);
    enter(arrow, 0.0312, OptionalDouble.empty());
    Arrow now =
        new Arrow(
            arrow,
            "reed",
            0.0312,
            OptionalDouble.empty(),
            OptionalDouble.of(0.008),
            Optional.empty(),
            Optional.empty());
    assertThat(Rows.list(store, t -> t.rack().arrows())).containsExactly(now);
    assertThat(Rows.maybe(store, t -> t.shots().byPassage(early.passageId())).orElseThrow().arrow())
        .contains(now);
  }

  private void enter(long arrow, double massKg, OptionalDouble lengthM) {
    store.writing(
        t ->
            t.rack()
                .enterArrow(
                    arrow,
                    massKg,
                    lengthM,
                    OptionalDouble.of(0.008),
                    Optional.empty(),
                    Optional.empty(),
                    NOON));
  }
}
