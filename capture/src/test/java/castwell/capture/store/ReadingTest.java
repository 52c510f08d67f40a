package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Readings.Reading;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Speeds read off another display stand beside those of the gates. */
class ReadingTest {
  @TempDir Path folder;
  private Store store;

  @BeforeEach
  void open() {
    store = Store.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private long enter(Transaction t, String shotId, OptionalDouble speedMps) {
    long session =
        t.sessions()
            .byName("old notes")
            .map(Sessions.Session::id)
            .orElseGet(() -> t.sessions().begin("by-hand", Rows.NOON, "old notes", "import"));
    long id = t.passages().enter(shotId, "by-hand", Rows.NOON, session, 2);
    t.readings()
        .add(id, new Reading(speedMps, 0.1, 0.2, "windy", "notes.csv"), Rows.NOON, "import");
    return id;
  }

  @Test
  void aSpeedReadElsewhereIsAShotWithoutGates() {
    store.writing(t -> enter(t, "h-1", OptionalDouble.of(45)));

    Shot shot = store.read(t -> t.shots().byShotId("h-1")).orElseThrow();

    assertThat(shot.byGates()).isEmpty();
    assertThat(shot.origin()).isEqualTo(new Shot.ByHand("notes.csv", "windy"));
    assertThat(shot.counts()).isTrue();
    assertThat(shot.end()).isEqualTo(2);
    assertThat(shot.figure().speedMps()).hasValue(45);
    assertThat(shot.figure().speedUCommonMps()).hasValue(0.2);
  }

  @Test
  void withoutASpeedItDoesntCount() {
    store.writing(t -> enter(t, "h-1", OptionalDouble.empty()));

    assertThat(store.read(t -> t.shots().byShotId("h-1")).orElseThrow().counts()).isFalse();
    assertThat(tally()).isEqualTo(new Shots.Tally(1, 0));
  }

  @Test
  void aPersonsWordIsTalliedAsOfAnyShot() {
    store.writing(
        t -> {
          enter(t, "h-1", OptionalDouble.of(45));
          long plucked = enter(t, "h-2", OptionalDouble.of(40));
          t.decisions().decide(plucked, Decided.SET_ASIDE, "plucked", Rows.NOON, "page");
        });

    assertThat(tally()).isEqualTo(new Shots.Tally(2, 1));
  }

  private Shots.Tally tally() {
    return store.read(t -> t.shots().tally(t.sessions().byName("old notes").orElseThrow().id()));
  }

  @Test
  void ofTwoForceDrawCurvesTheLastEnteredHolds() {
    store.writing(
        t -> {
          long bow = t.rack().addBow("heron", Rows.NOON);
          OptionalDouble none = OptionalDouble.empty();
          t.forceDraws().add(bow, Rows.NOON, List.of(new Point(.5, 90, none)), Rows.NOON, "page");
          t.forceDraws().add(bow, Rows.NOON, List.of(new Point(.5, 95, none)), Rows.NOON, "page");

          assertThat(t.forceDraws().last(bow, Rows.NOON)).containsExactly(new Point(.5, 95, none));
          assertThat(t.forceDraws().last(bow, Rows.NOON.plusSeconds(1))).isEmpty();
        });
  }
}
