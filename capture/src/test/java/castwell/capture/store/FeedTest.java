package castwell.capture.store;

import static castwell.capture.store.Rows.NOON;
import static castwell.capture.store.Rows.STATION;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.store.Feed.Item;
import castwell.capture.store.Feed.Kind;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What happened comes in order, and a reader goes on where it left off. */
class FeedTest {
  @TempDir Path folder;

  private static void say(Store store, int howMany) {
    for (int i = 0; i < howMany; i++) {
      store.writing(t -> t.feed().add(Kind.TAGS, STATION, OptionalLong.empty()));
    }
  }

  @Test
  void nothingHappenedYet() {
    try (Store store = Store.open(folder)) {
      assertThat(store.<Long>read(t -> t.feed().last())).isZero();
      assertThat(Rows.list(store, t -> t.feed().after(0, 10))).isEmpty();
    }
  }

  @Test
  void aReaderThatResumesMissesNothingAndHearsNothingTwice() {
    try (Store store = Store.open(folder)) {
      say(store, 25);
      List<Long> heard = new ArrayList<>();
      long last = 0;
      for (int round = 0; round < 5; round++) {
        for (Item item : read(store, last, 7)) {
          heard.add(item.id());
          last = item.id();
        }
        say(store, 1);
      }
      assertThat(heard).hasSize(29).doesNotHaveDuplicates().isSorted();
      assertThat(read(store, last, 10)).hasSize(1);
    }
  }

  private static List<Item> read(Store store, long after, int limit) {
    return store.read(t -> t.feed().after(after, limit));
  }

  @Test
  void anItemTellsWhatItIsAbout() {
    try (Store store = Store.open(folder)) {
      long shot = store.write(t -> Rows.shoot(t, 1, NOON, true)).id();
      store.writing(t -> t.feed().shot(STATION, shot));
      store.writing(t -> t.feed().add(Kind.REFRESH, STATION, OptionalLong.empty()));
      assertThat(read(store, 0, 10))
          .containsExactly(
              new Item(1, Kind.SHOT, STATION, OptionalLong.of(shot)),
              new Item(2, Kind.REFRESH, STATION, OptionalLong.empty()));
    }
  }

  @Test
  void idsGoOnAfterARestart() {
    try (Store store = Store.open(folder)) {
      say(store, 3);
    }
    try (Store store = Store.open(folder)) {
      say(store, 1);
      assertThat(read(store, 3, 10)).extracting(Item::id).containsExactly(4L);
    }
  }

  @Test
  void whatWasNotCommittedIsNotTold() {
    try (Store store = Store.open(folder)) {
      assertThatThrownBy(
              () ->
                  store.writing(
                      t -> {
                        t.feed().add(Kind.RACK, STATION, OptionalLong.empty());
                        throw new IllegalStateException("a bug");
                      }))
          .hasMessage("a bug");
      assertThat(store.<Long>read(t -> t.feed().last())).isZero();
    }
  }
}
