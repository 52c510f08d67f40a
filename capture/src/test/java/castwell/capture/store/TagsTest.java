package castwell.capture.store;

import static castwell.capture.store.Rows.NOON;
import static castwell.capture.store.Rows.STATION;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who shoots what holds from an instant on; a shot's own tags can be changed, and none is lost. */
class TagsTest {
  @TempDir Path folder;
  private Store store;
  private Tags.Pair heron;
  private Tags.Pair wren;

  @BeforeEach
  void open() {
    store = Store.open(folder);
    heron = new Tags.Pair(bow("heron"), OptionalLong.empty());
    wren = new Tags.Pair(bow("wren"), OptionalLong.empty());
  }

  @AfterEach
  void close() {
    store.close();
  }

  private OptionalLong bow(String name) {
    return OptionalLong.of(store.write(t -> t.rack().addBow(name, NOON)));
  }

  private void change(Instant at, Tags.Pair tags) {
    store.writing(t -> t.tags().change(STATION, at, tags, "page"));
  }

  private Tags.Pair at(Instant at) {
    return store.read(t -> t.tags().at(STATION, at));
  }

  @Test
  void nothingIsKnownBeforeTheFirstChange() {
    assertThat(at(NOON)).isEqualTo(Tags.Pair.NOT_KNOWN);
    change(NOON, heron);
    assertThat(at(NOON.minusMillis(1))).isEqualTo(Tags.Pair.NOT_KNOWN);
  }

  @Test
  void aChangeHoldsFromItsInstantUntilTheNext() {
    change(NOON, heron);
    change(NOON.plusSeconds(60), wren);
    assertThat(at(NOON)).isEqualTo(heron);
    assertThat(at(NOON.plusMillis(59_999))).isEqualTo(heron);
    assertThat(at(NOON.plusSeconds(60))).isEqualTo(wren);
    assertThat(at(NOON.plusSeconds(1_000_000))).isEqualTo(wren);
  }

  @Test
  void ofTwoAtOneInstantTheLastHolds() {
    change(NOON, heron);
    change(NOON, wren);
    assertThat(at(NOON)).isEqualTo(wren);
  }

  @Test
  void tagsCanBeTakenAway() {
    change(NOON, heron);
    change(NOON.plusSeconds(60), Tags.Pair.NOT_KNOWN);
    assertThat(at(NOON.plusSeconds(61))).isEqualTo(Tags.Pair.NOT_KNOWN);
  }

  @Test
  void anotherStationHasItsOwn() {
    change(NOON, heron);
    assertThat(store.<Tags.Pair>read(t -> t.tags().at("garden", NOON)))
        .isEqualTo(Tags.Pair.NOT_KNOWN);
  }

  @Test
  void aShotTaggedAgainKeepsItsHistory() {
    long shot = store.write(t -> Rows.shoot(t, 1, NOON, true)).id();
    assertThat(Rows.maybe(store, t -> t.tags().ofShot(shot))).isEmpty();
    store.writing(t -> t.tags().tagShot(shot, heron, NOON, "capture", ""));
    Instant later = NOON.plusSeconds(90);
    store.writing(t -> t.tags().tagShot(shot, wren, later, "page", "wrong bow"));
    assertThat(Rows.maybe(store, t -> t.tags().ofShot(shot))).contains(wren);
    assertThat(Rows.list(store, t -> t.tags().history(shot)))
        .containsExactly(
            new Tags.Tagging(Optional.of("heron"), Optional.empty(), NOON, "capture", ""),
            new Tags.Tagging(Optional.of("wren"), Optional.empty(), later, "page", "wrong bow"));
  }
}
