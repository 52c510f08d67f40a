package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.store.Shot;
import castwell.capture.wire.Fault;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Another board bears the name of one that was here before, or its boot counter was reset. (device,
 * boot, edge) names an edge for ever, so no edge may pass for a repeat of another.
 */
@Tag("slow")
class NameReusedTest {
  @TempDir Path folder;

  private static HandFedStation plugged(RangeBench bench, String station, int edges) {
    HandFedStation lane = new HandFedStation(bench, station);
    lane.plugIn(0);
    lane.identity(1000, 7);
    lane.beat(2000, 7, edges);
    return lane;
  }

  @Test
  void bothAreKept() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation first = plugged(bench, "lane", 0);
      first.arrow(1_000_000, 7, 1);
      first.arrow(2_000_000, 7, 5);
      first.end(4_000_000);
      HandFedStation second = plugged(bench, "lane", 0);
      second.arrow(1_500_000, 7, 1);
      second.end(4_000_000);
      assertThat(second.faults().of(Fault.NAME_REUSED)).isEqualTo(1);
      assertThat(bench.shots("lane"))
          .allMatch(Shot::counts)
          .extracting(Shot::shotId)
          .containsExactlyInAnyOrder("gate-1.7.1", "gate-1.7.5", "gate-1~2.7.1");
      assertThat(bench.tables().rows()).containsEntry("edge", 12L);
    }
  }

  /** Without a heartbeat before it, the edge itself tells. */
  @Test
  void anEdgeWithOtherTicksTells() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation first = plugged(bench, "lane", 0);
      first.arrow(1_000_000, 7, 1);
      first.end(4_000_000);
      HandFedStation second = new HandFedStation(bench, "lane");
      second.plugIn(0);
      second.identity(1000, 7);
      second.arrow(2_500_000, 7, 1);
      second.end(4_000_000);
      assertThat(second.faults().of(Fault.NAME_REUSED)).isEqualTo(1);
      assertThat(bench.shots("lane"))
          .allMatch(Shot::counts)
          .extracting(Shot::shotId)
          .containsExactly("gate-1.7.1", "gate-1~2.7.1");
    }
  }

  /** What each board said before its first shot is filed with that board. */
  @Test
  void heartbeatsAndIdentitiesGoWithTheirBoard() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation first = plugged(bench, "lane-1", 0);
      first.arrow(1_000_000, 7, 1);
      first.end(4_000_000);
      HandFedStation second = plugged(bench, "lane-2", 0);
      second.beat(500_000, 7, 0);
      second.arrow(1_500_000, 7, 1);
      second.end(4_000_000);
      assertThat(
              bench
                  .tables()
                  .query(
                      """
                      SELECT series, station, count(*) FROM heartbeat
                      JOIN listening ON listening.id = listening_id JOIN board ON board.id = board_id
                      GROUP BY 1, 2 ORDER BY 1"""))
          .containsExactly("1,lane-1,1", "2,lane-2,2");
      assertThat(
              bench
                  .tables()
                  .query(
                      """
                      SELECT series, station FROM identity
                      JOIN listening ON listening.id = listening_id JOIN board ON board.id = board_id
                      ORDER BY 1"""))
          .containsExactly("1,lane-1", "2,lane-2");
    }
  }
}
