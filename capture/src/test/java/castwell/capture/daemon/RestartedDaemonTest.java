package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The daemon is killed, which is to say never told to end, and started again on the same folder;
 * the board sends again what it keeps. Board protocol, what a host must do, 1 and 3.
 */
class RestartedDaemonTest {
  @TempDir Path folder;

  @Test
  void edgesOfAPassageThatWasOpenAreAskedForAgain() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = plugged(bench);
      lane.edgeOfArrow(1_000_500, 7, 1, 0, 1_000_000);
      lane.edgeOfArrow(1_010_500, 7, 1, 1, 1_000_000);
    }
    try (RangeBench bench = RangeBench.in(folder)) {
      assertThat(bench.shots("lane")).isEmpty();
      HandFedStation lane = plugged(bench);
      assertThat(lane.asked()).endsWith("R,7,1\n");
      sendAgain(lane, 5_000_000);
      assertThat(bench.shots("lane")).singleElement().matches(Shot::counts);
    }
  }

  @Test
  void aPassageJudgedTooEarlyIsAmended() {
    String shotId;
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = plugged(bench);
      for (int i = 0; i < 3; i++) {
        lane.edgeOfArrow(1_000_000, 7, 1, i, 1_000_000);
      }
      lane.passTimeUntil(2_000_000);
      Shot judged = bench.shots("lane").get(0);
      assertThat(judged.counts()).isFalse();
      shotId = judged.shotId();
    }
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = plugged(bench);
      assertThat(lane.asked()).endsWith("R,7,4\n");
      sendAgain(lane, 5_000_000);
      Shot amended = bench.shots("lane").get(0);
      assertThat(bench.shots("lane")).hasSize(1);
      assertThat(amended.shotId()).isEqualTo(shotId);
      assertThat(amended.counts()).isTrue();
      assertThat(amended.byGates().orElseThrow().lastEdge()).isEqualTo(4);
    }
  }

  @Test
  void edgesThatAreStoredAddNothingWhenTheyComeAgain() {
    Map<String, Long> before;
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = plugged(bench);
      lane.arrow(1_000_000, 7, 1);
      lane.passTimeUntil(2_000_000);
      before = bench.tables().rows();
    }
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = plugged(bench);
      assertThat(lane.asked()).endsWith("R,7,5\n");
      sendAgain(lane, 5_000_000);
      Map<String, Long> after = bench.tables().rows();
      List.of("edge", "passage", "figure", "shot_tag", "feed", "session", "calibration")
          .forEach(table -> assertThat(after.get(table)).as(table).isEqualTo(before.get(table)));
    }
  }

  /** The board's next shot follows on what was stored before. */
  @Test
  void nothingIsMissedThatFellIntoTheGap() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = plugged(bench);
      lane.arrow(1_000_000, 7, 1);
      lane.passTimeUntil(2_000_000);
    }
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = new HandFedStation(bench, "lane");
      lane.plugIn(20_000_000);
      lane.identity(20_001_000, 7);
      lane.beat(20_002_000, 7, 12);
      assertThat(lane.asked()).endsWith("R,7,5\n");
      for (int i = 0; i < 8; i++) {
        int first = i < 4 ? 5 : 9;
        lane.edgeOfArrow(20_010_000, 7, first, i % 4, i < 4 ? 3_000_000 : 4_000_000);
      }
      lane.passTimeUntil(21_000_000);
      assertThat(bench.shots("lane"))
          .hasSize(3)
          .allMatch(Shot::counts)
          .extracting(shot -> shot.byGates().orElseThrow().firstEdge())
          .containsExactly(1, 5, 9);
    }
  }

  private static HandFedStation plugged(RangeBench bench) {
    HandFedStation lane = new HandFedStation(bench, "lane");
    lane.plugIn(100_000);
    lane.identity(110_000, 7);
    lane.beat(120_000, 7, bench.shots("lane").isEmpty() ? 0 : 4);
    return lane;
  }

  private static void sendAgain(HandFedStation lane, long micros) {
    for (int i = 0; i < 4; i++) {
      lane.edgeOfArrow(micros, 7, 1, i, 1_000_000);
    }
    lane.passTimeUntil(micros + 1_000_000);
  }
}
