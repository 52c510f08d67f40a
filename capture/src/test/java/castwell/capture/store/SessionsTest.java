package castwell.capture.store;

import static castwell.capture.store.Rows.DATE;
import static castwell.capture.store.Rows.NOON;
import static castwell.capture.store.Rows.STATION;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A new end after 3 minutes without a shot, a new session after 3 hours or when asked. */
class SessionsTest {
  private static final Duration MS = Duration.ofMillis(1);
  private static final Duration END = Duration.ofMinutes(3);
  private static final Duration SESSION = Duration.ofHours(3);

  @TempDir Path folder;
  private Store store;
  private int edge = 1;

  @BeforeEach
  void open() {
    store = Store.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private String shot(Instant fired) {
    return passage(fired, true);
  }

  private String wasp(Instant fired) {
    return passage(fired, false);
  }

  /** The name of its session and the number of its end. */
  private String passage(Instant fired, boolean clean) {
    return store.write(
        t -> {
          Passages.Row row = Rows.shoot(t, edge, fired, clean);
          edge += 4;
          return t.sessions().byId(row.sessionId()).orElseThrow().name() + "/" + row.endNumber();
        });
  }

  @Test
  void theFirstShotBeginsTheFirstEndOfTheFirstSession() {
    assertThat(shot(NOON)).isEqualTo(DATE + "/1");
    assertThat(Rows.list(store, t -> t.sessions().all()))
        .extracting(Sessions.Session::startedMs)
        .containsExactly(NOON);
  }

  @Test
  void anEndLastsUntil3MinutesWithoutAShot() {
    shot(NOON);
    Instant second = NOON.plus(END);
    assertThat(shot(second)).isEqualTo(DATE + "/1");
    Instant third = second.plus(END).plus(MS);
    assertThat(shot(third)).isEqualTo(DATE + "/2");
    assertThat(shot(third.plusSeconds(10))).isEqualTo(DATE + "/2");
    assertThat(shot(third.plusSeconds(400))).isEqualTo(DATE + "/3");
  }

  @Test
  void aSessionLastsUntil3HoursWithoutAShot() {
    shot(NOON);
    Instant second = NOON.plus(SESSION);
    assertThat(shot(second)).isEqualTo(DATE + "/2");
    assertThat(shot(second.plus(SESSION).plus(MS))).isEqualTo(DATE + "-2/1");
  }

  @Test
  void aSessionBeginsWhenAsked() {
    shot(NOON);
    Instant asked = NOON.plusSeconds(30);
    store.writing(t -> t.sessions().begin(STATION, asked, DATE, "page"));
    assertThat(shot(asked.minus(MS))).isEqualTo(DATE + "/1");
    assertThat(shot(asked)).isEqualTo(DATE + "-2/1");
    assertThat(shot(asked.plusSeconds(30))).isEqualTo(DATE + "-2/1");
    assertThat(shot(asked.plusSeconds(300))).isEqualTo(DATE + "-2/2");
  }

  @Test
  void aWalkBeforeTheFirstShotOfASessionAskedForBeginsNoSecondEnd() {
    store.writing(t -> t.sessions().begin(STATION, NOON, DATE, "page"));
    assertThat(shot(NOON.plusSeconds(600))).isEqualTo(DATE + "/1");
  }

  @Test
  void whatDoesNotCountNeverBeginsAnEnd() {
    shot(NOON);
    assertThat(wasp(NOON.plusSeconds(600))).isEqualTo(DATE + "/1");
    assertThat(shot(NOON.plusSeconds(620))).isEqualTo(DATE + "/2");
  }

  @Test
  void whatDoesNotCountNeverProlongsAnEnd() {
    shot(NOON);
    wasp(NOON.plusSeconds(170));
    assertThat(shot(NOON.plusSeconds(185))).isEqualTo(DATE + "/2");
  }

  @Test
  void whatDoesNotCountNeverBeginsOrProlongsASession() {
    shot(NOON);
    Instant evening = NOON.plus(SESSION).plus(MS);
    assertThat(wasp(evening.minusSeconds(60))).isEqualTo(DATE + "/1");
    assertThat(wasp(evening)).isEqualTo(DATE + "/1");
    assertThat(shot(evening.plusSeconds(1))).isEqualTo(DATE + "-2/1");
  }

  @Test
  void whatDoesNotCountNeedsASessionAllTheSameWhereThereIsNone() {
    assertThat(wasp(NOON)).isEqualTo(DATE + "/1");
    assertThat(shot(NOON.plusSeconds(600))).isEqualTo(DATE + "/1");
    assertThat(shot(NOON.plusSeconds(601))).isEqualTo(DATE + "/1");
  }

  @Test
  void aShotSetAsideByHandKeepsItsPlace() {
    shot(NOON);
    store.writing(
        t -> {
          long id = t.shots().last(STATION).orElseThrow().passageId();
          t.decisions().decide(id, Decisions.Decided.SET_ASIDE, "", NOON, "page");
        });
    assertThat(shot(NOON.plusSeconds(100))).isEqualTo(DATE + "/1");
    assertThat(Rows.list(store, t -> t.shots().ofEnd(DATE, 1)))
        .extracting(Shot::counts)
        .containsExactly(false, true);
  }

  @Test
  void aShotThatComesLateJoinsTheEndItWasFiredIn() {
    shot(NOON);
    assertThat(shot(NOON.plusSeconds(600))).isEqualTo(DATE + "/2");
    assertThat(shot(NOON.plusSeconds(60))).isEqualTo(DATE + "/1");
  }

  @Test
  void anEarlierAfternoonReplayedAfterwardsIsASessionOfItsOwn() {
    shot(NOON);
    assertThat(shot(NOON.minus(Duration.ofDays(3)))).isEqualTo(DATE + "-2/1");
    assertThat(Rows.list(store, t -> t.sessions().all()))
        .extracting(Sessions.Session::name)
        .containsExactly(DATE, DATE + "-2");
  }

  @Test
  void anotherStationHasItsOwnSessions() {
    shot(NOON);
    Sessions.Place place =
        store.write(t -> t.sessions().place("garden", NOON.plusSeconds(5), true, DATE));
    assertThat(Rows.maybe(store, t -> t.sessions().byId(place.sessionId())).orElseThrow().name())
        .isEqualTo(DATE + "-2");
  }
}
