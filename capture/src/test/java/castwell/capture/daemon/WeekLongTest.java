package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.capture.wire.Fault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A station that nobody looks after, in accelerated time: every shot is kept, faults are what they
 * were, memory stays what it is, and the file grows as reckoned. Half a day; a week by
 *
 * <pre>mvn -pl analysis,capture test -Dtest=WeekLongTest \
 *   -Dsurefire.failIfNoSpecifiedTests=false -Dcastwell.days=7</pre>
 */
@Tag("slow")
class WeekLongTest {
  private static final double DAYS = Double.parseDouble(System.getProperty("castwell.days", "0.5"));
  private static final long SECONDS = Math.round(DAYS * UnattendedBoard.DAY_SECONDS);
  private static final int SHOTS_A_DAY = 1_429; // 10,000 a week

  private static final long SAMPLE_SECONDS = 1_800;
  private static final int SAMPLES_TO_WARM_UP = 6;
  private static final double MOST_GROWTH_BYTES = 1e6;

  /**
   * By SQLite's "Database File Format", 2.1: 19 bytes of record header, 27 to 30 of values, 3 of
   * cell; and pages are nine tenths full.
   */
  private static final double BYTES_A_BEAT = 56;

  /** Four edges at 25, figure 149, passage 158 with its indexes, tags 67, feed 24. */
  private static final double BYTES_A_SHOT = 500;

  @TempDir Path folder;

  private final long seed = Seed.of(WeekLongTest.class);
  private final List<Long> usedBytes = new ArrayList<>();
  private long emptyBytes;

  @BeforeEach
  void anEmptyStore() throws IOException {
    RangeBench.in(folder).close();
    emptyBytes = fileBytes();
  }

  @Test
  void everyShotOfDaysOfShootingIsKept() throws IOException {
    UnattendedBoard board = live(SHOTS_A_DAY);

    Tables tables = new Tables(folder);
    List<String> speeds =
        tables.query(
            """
            SELECT clean, speed_mps FROM passage JOIN figure ON passage_id = passage.id
            WHERE part_of IS NULL ORDER BY fired_ms""");
    assertThat(speeds).hasSize(board.shots());
    for (int i = 0; i < board.shots(); i++) {
      String[] cells = speeds.get(i).split(",");
      double mps = UnattendedBoard.mps(i);
      if (cells[0].equals("1")) {
        assertThat(Double.parseDouble(cells[1])).isCloseTo(mps, within(mps * 2e-4));
      }
    }
    assertThat(speeds.stream().filter(row -> row.startsWith("1")))
        .hasSize(board.shots() - board.shotsCut());
    checkGrowth(board.shots());
  }

  @Test
  void anIdleStationCostsItsBeatsAlone() throws IOException {
    live(0);
    checkGrowth(0);
  }

  private UnattendedBoard live(int shotsADay) {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = new HandFedStation(bench, "range");
      UnattendedBoard board = new UnattendedBoard(lane, shotsADay, new Random(seed));
      for (long second = 0; second < SECONDS; second++) {
        board.second(second);
        if (second % SAMPLE_SECONDS == SAMPLE_SECONDS - 1) {
          usedBytes.add(usedBytes());
        }
      }
      lane.end(SECONDS * 1_000_000);
      checkFaults(board, lane.faults().all());
      return board;
    }
  }

  private static void checkFaults(UnattendedBoard board, Map<Fault, Long> faults) {
    Map<Fault, Long> expected =
        Map.of(
            Fault.GARBAGE, (long) board.garbage(),
            Fault.BOARD_RESTARTED, (long) board.restarts(),
            Fault.LINE_GAP, (long) board.shotsCut(),
            Fault.EDGE_GAP, (long) board.shotsCut(),
            Fault.LOST_EDGE, (long) board.shotsCut());
    expected.forEach(
        (fault, times) ->
            assertThat(faults.getOrDefault(fault, 0L)).as(fault.name()).isEqualTo(times));
    assertThat(expected.keySet()).containsAll(faults.keySet());
  }

  private void checkGrowth(int shots) throws IOException {
    long beats = Long.parseLong(new Tables(folder).query("SELECT count(*) FROM heartbeat").get(0));
    assertThat(beats).isEqualTo(SECONDS);
    double reckoned = emptyBytes + beats * BYTES_A_BEAT + shots * BYTES_A_SHOT;
    double growth = growthBytes(usedBytes.subList(SAMPLES_TO_WARM_UP, usedBytes.size()));
    System.out.printf(
        "%.1f days, %d shots: file %.2f MB, reckoned %.2f MB; heap %.2f MB, grown by %.3f MB%n",
        DAYS,
        shots,
        fileBytes() / 1e6,
        reckoned / 1e6,
        usedBytes.get(usedBytes.size() - 1) / 1e6,
        growth / 1e6);
    assertThat((double) fileBytes()).isCloseTo(reckoned, within(0.05 * reckoned));
    assertThat(growth)
        .as("used after each collection: %s", usedBytes)
        .isLessThan(MOST_GROWTH_BYTES);
  }

  private long fileBytes() throws IOException {
    return Files.size(folder.resolve("castwell.db"));
  }

  private static long usedBytes() {
    System.gc();
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }

  /** The least-squares line's rise from the first sample to the last. */
  private static double growthBytes(List<Long> samples) {
    int n = samples.size();
    double meanIndex = (n - 1) / 2.0;
    double mean = samples.stream().mapToLong(Long::longValue).average().orElseThrow();
    double products = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      products += (i - meanIndex) * (samples.get(i) - mean);
      squares += (i - meanIndex) * (i - meanIndex);
    }
    return products / squares * (n - 1);
  }
}
