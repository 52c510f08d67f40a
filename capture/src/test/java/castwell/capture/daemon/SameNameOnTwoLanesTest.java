package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.station.BoardsHeard;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two boards of one name, in the same count of starts, shoot on two lanes at the same time. */
class SameNameOnTwoLanesTest {
  private static final long SECOND = 1_000_000;

  @TempDir Path folder;

  private static void start(HandFedStation lane, long micros, int edges) {
    lane.plugIn(micros);
    lane.identity(micros + 1000, 7);
    lane.beat(micros + 2000, 7, edges);
  }

  private static List<String> shots(RangeBench bench, String station) {
    return bench.shots(station).stream().filter(Shot::counts).map(Shot::shotId).toList();
  }

  @Test
  void theirArrowsAreKeptApartThoughTheirNumbersAreTheSame() {
    try (RangeBench bench = RangeBench.in(folder)) {
      BoardsHeard boards = new BoardsHeard();
      HandFedStation one = new HandFedStation(bench, "lane-1", boards);
      HandFedStation two = new HandFedStation(bench, "lane-2", boards);
      start(one, 0, 0);
      start(two, 100_000, 0);
      for (int i = 0; i < 5; i++) {
        one.beat((1 + i) * SECOND, 7, 4 * i);
        two.beat((1 + i) * SECOND + 1000, 7, 4 * i);
        one.arrow((1 + i) * SECOND + 200_000, 7, 1 + 4 * i);
        two.arrow((1 + i) * SECOND + 300_000, 7, 1 + 4 * i);
      }
      one.end(9 * SECOND);
      two.end(9 * SECOND);
      assertThat(shots(bench, "lane-1"))
          .containsExactly("gate-1.7.1", "gate-1.7.5", "gate-1.7.9", "gate-1.7.13", "gate-1.7.17");
      assertThat(shots(bench, "lane-2"))
          .containsExactly(
              "gate-1~2.7.1", "gate-1~2.7.5", "gate-1~2.7.9", "gate-1~2.7.13", "gate-1~2.7.17");
    }
  }

  /** The second has counted more edges than the first has stored: numbers alone don't tell. */
  @Test
  void aBoardThatJoinsLaterIsNotTakenForTheOneThatShootsAlready() {
    try (RangeBench bench = RangeBench.in(folder)) {
      BoardsHeard boards = new BoardsHeard();
      HandFedStation one = new HandFedStation(bench, "lane-1", boards);
      HandFedStation two = new HandFedStation(bench, "lane-2", boards);
      start(one, 0, 0);
      one.arrow(SECOND, 7, 1);
      start(two, 2 * SECOND, 40);
      assertThat(two.asked()).endsWith("R,7,1\n");
      two.arrow(3 * SECOND, 7, 41);
      one.arrow(3 * SECOND + 10_000, 7, 5);
      one.end(5 * SECOND);
      two.end(5 * SECOND);
      assertThat(shots(bench, "lane-1")).containsExactly("gate-1.7.1", "gate-1.7.5");
      assertThat(shots(bench, "lane-2")).containsExactly("gate-1~2.7.41");
    }
  }

  @Test
  void afterARestartEachLaneKnowsItsOwnBoardAgain() {
    try (RangeBench bench = RangeBench.in(folder)) {
      BoardsHeard boards = new BoardsHeard();
      HandFedStation one = new HandFedStation(bench, "lane-1", boards);
      HandFedStation two = new HandFedStation(bench, "lane-2", boards);
      start(one, 0, 0);
      start(two, 1000, 0);
      one.arrow(SECOND, 7, 1);
      two.arrow(SECOND + 100, 7, 1);
      one.end(3 * SECOND);
      two.end(3 * SECOND);
    }
    try (RangeBench bench = RangeBench.in(folder)) {
      BoardsHeard boards = new BoardsHeard();
      HandFedStation one = new HandFedStation(bench, "lane-1", boards);
      HandFedStation two = new HandFedStation(bench, "lane-2", boards);
      start(one, 20 * SECOND, 8);
      start(two, 20 * SECOND + 1000, 8);
      one.arrow(21 * SECOND, 7, 9);
      two.arrow(21 * SECOND + 100, 7, 9);
      one.end(23 * SECOND);
      two.end(23 * SECOND);
      assertThat(shots(bench, "lane-1")).containsExactly("gate-1.7.1", "gate-1.7.9");
      assertThat(shots(bench, "lane-2")).containsExactly("gate-1~2.7.1", "gate-1~2.7.9");
    }
  }

  @Test
  void aBoardTakenToAnotherLaneGoesOnAsItself() {
    try (RangeBench bench = RangeBench.in(folder)) {
      BoardsHeard boards = new BoardsHeard();
      HandFedStation one = new HandFedStation(bench, "lane-1", boards);
      HandFedStation two = new HandFedStation(bench, "lane-2", boards);
      start(one, 0, 0);
      one.arrow(SECOND, 7, 1);
      one.pullOut(2 * SECOND);
      start(two, 3 * SECOND, 4);
      assertThat(two.asked()).endsWith("R,7,5\n");
      two.arrow(4 * SECOND, 7, 5);
      one.end(6 * SECOND);
      two.end(6 * SECOND);
      assertThat(shots(bench, "lane-1")).containsExactly("gate-1.7.1");
      assertThat(shots(bench, "lane-2")).containsExactly("gate-1.7.5");
    }
  }

  /** Its link stays open meanwhile, as it does over a broker. */
  @Test
  void aBoardThatWasSilentWhileAnotherOfItsNameJoinedLosesNothing() {
    try (RangeBench bench = RangeBench.in(folder)) {
      BoardsHeard boards = new BoardsHeard();
      HandFedStation one = new HandFedStation(bench, "lane-1", boards);
      HandFedStation two = new HandFedStation(bench, "lane-2", boards);
      start(one, 0, 0);
      one.arrow(SECOND, 7, 1);
      one.passTimeUntil(5 * SECOND);
      start(two, 5 * SECOND, 12); // taken for the other
      two.arrow(6 * SECOND, 7, 13);
      one.beat(6 * SECOND + 500_000, 7, 4);
      one.arrow(7 * SECOND, 7, 13);
      two.beat(7 * SECOND + 500_000, 7, 16);
      one.end(9 * SECOND);
      two.end(9 * SECOND);
      assertThat(shots(bench, "lane-1")).containsExactly("gate-1.7.1", "gate-1~2.7.13");
      assertThat(shots(bench, "lane-2")).containsExactly("gate-1.7.13");
    }
  }
}
