package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.Sentence.Levels;
import castwell.capture.wire.Sentence.Surroundings;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.ProgressHandler;

/** What boards told of themselves, found again without reading all of it. */
class StationBeatsTest {
  private static final int HZ = 2_000_000;

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

  /** Beats each second for so long, the light telling which minute it is. */
  private void beat(String station, int boot, Instant from, Duration time) {
    store.writing(
        t -> {
          long board = Rows.board(t);
          long listening = t.boards().listening(station, "/dev/ttyACM0", from);
          Identity identity = new Identity(0, 1, "sim-1", "gate-1", boot, HZ, 0, 0, 64, 'P');
          t.raw().identity(board, listening, identity, 0);
          for (int second = 1; second <= time.toSeconds(); second++) {
            t.raw().heartbeat(board, listening, beat(boot, second), second * 1_000_000L);
          }
        });
  }

  private static Heartbeat beat(int boot, int second) {
    OptionalInt minute = OptionalInt.of(second / 60);
    OptionalInt none = OptionalInt.empty();
    return new Heartbeat(
        0,
        boot,
        (long) second * HZ,
        0,
        5,
        1,
        2,
        Optional.of(new Levels(false, true)),
        new Surroundings(minute, none, OptionalInt.of(5010), none, none, none),
        70);
  }

  private List<StationBeats.Run> runs(String station) {
    return store.read(t -> t.beats().runs(station));
  }

  private List<HeardBeat> sampled(int most) {
    return store.read(t -> t.beats().sampled("range", Duration.ofMinutes(10), most));
  }

  @Test
  void aBeatComesBackAsItWas() {
    beat("range", 7, Rows.NOON, Duration.ofSeconds(3));
    List<HeardBeat> newest = store.read(t -> t.beats().newest(t.beats().runs("range").get(0), 2));
    assertThat(newest)
        .containsExactly(
            new HeardBeat(Rows.NOON.plusSeconds(2), beat(7, 2)),
            new HeardBeat(Rows.NOON.plusSeconds(3), beat(7, 3)));
  }

  @Test
  void runsComeTheLastHeardFirstAndStationByStation() {
    beat("range", 8, Rows.NOON.plus(Duration.ofDays(1)), Duration.ofSeconds(2));
    beat("range", 7, Rows.NOON, Duration.ofSeconds(2));
    beat("meadow", 9, Rows.NOON.plus(Duration.ofDays(2)), Duration.ofSeconds(2));
    assertThat(runs("range")).extracting(StationBeats.Run::boot).containsExactly(8, 7);
    assertThat(runs("nowhere")).isEmpty();
  }

  @Test
  void samplesAreThatFarApartNewestFirstOverRuns() {
    beat("range", 7, Rows.NOON, Duration.ofMinutes(31));
    beat("range", 8, Rows.NOON.plus(Duration.ofDays(1)), Duration.ofMinutes(21));
    List<HeardBeat> sampled = sampled(100);
    assertThat(sampled)
        .extracting(heard -> heard.beat().surroundings().lightA().getAsInt())
        .containsExactly(21, 11, 1, 31, 21, 11, 1);
    assertThat(sampled(5)).isEqualTo(sampled.subList(0, 5));
  }

  /**
   * Two and a half days at a beat a second: read whole they would take SQLite several steps each.
   */
  @Test
  void samplingReadsNoMoreThanItTells() {
    beat("range", 7, Rows.NOON, Duration.ofSeconds(1));
    store.writing(
        t ->
            t.handle()
                .execute(
                    """
                    WITH RECURSIVE second (s) AS (SELECT 2 UNION ALL SELECT s + 1 FROM second WHERE s < 216000)
                    INSERT INTO heartbeat SELECT board_id, boot, s * 2000000, listening_id, s * 1000000, queued,
                      bytes, edges, merged, dropped, blocked_a, blocked_b, light_a, light_b, supply_mv, chip_centi_c,
                      air_centi_c, humidity_centi_percent FROM second, heartbeat"""));
    AtomicInteger hundreds = new AtomicInteger();
    ProgressHandler counting =
        new ProgressHandler() {
          @Override
          protected int progress() {
            hundreds.incrementAndGet();
            return 0; // on with it
          }
        };
    List<HeardBeat> sampled =
        store.read(
            t -> {
              count(t, counting);
              return t.beats().sampled("range", Duration.ofMinutes(10), 300);
            });
    assertThat(sampled).hasSize(300);
    System.out.printf("300 of 216,000 beats: %d steps of SQLite%n", 100 * hundreds.get());
    assertThat(100 * hundreds.get()).isPositive().isLessThan(216_000);
  }

  private static void count(Transaction t, ProgressHandler counting) {
    try {
      ProgressHandler.setHandler(t.handle().getConnection(), 100, counting);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }
}
