package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.wording.Phrase;
import castwell.capture.English;
import castwell.capture.FullDisk;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.Shot;
import castwell.capture.store.StoreUnavailable;
import castwell.capture.wire.Fault;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What can't be written waits in memory, in order, and nobody hears of it before it is written. */
class FullDiskTest {
  private static final long SECOND = 1_000_000;
  private static final int ROOM = 20;

  @TempDir Path folder;

  private RangeBench bench() {
    RangeBench bench = RangeBench.in(folder, Clock.fixed(HandFedStation.STARTED, ZoneOffset.UTC));
    bench
        .commands()
        .arrows()
        .add(
            "light",
            0.020,
            Measures.<ArrowMeasure>none()
                .with(ArrowMeasure.LENGTH, 0.72)
                .with(ArrowMeasure.DIAMETER, 0.008));
    bench
        .commands()
        .arrows()
        .add(
            "heavy",
            0.030,
            Measures.<ArrowMeasure>none()
                .with(ArrowMeasure.LENGTH, 0.72)
                .with(ArrowMeasure.DIAMETER, 0.008));
    return bench;
  }

  private static HandFedStation online(RangeBench bench) {
    return online(bench, Backlog.MOST);
  }

  private static HandFedStation online(RangeBench bench, int mostWaiting) {
    HandFedStation lane = new HandFedStation(bench, "lane", mostWaiting);
    lane.plugIn(0);
    lane.identity(1000, 7);
    lane.beat(2000, 7, 0);
    return lane;
  }

  private static StoreState last(HandFedStation lane) {
    return lane.stores().get(lane.stores().size() - 1);
  }

  private static void sayAgain(HandFedStation lane, long heard, int firstEdge, long stamped) {
    for (int i = 0; i < 4; i++) {
      lane.edgeOfArrow(heard, 7, firstEdge, i, stamped);
    }
  }

  private static List<String> arrows(RangeBench bench) {
    return bench.shots("lane").stream()
        .map(shot -> shot.arrow().map(arrow -> arrow.name()).orElse("none"))
        .toList();
  }

  @Test
  void shotsAndKeyPressesWaitAndThenComeInTheirOrder() {
    try (RangeBench bench = bench()) {
      HandFedStation lane = online(bench);
      List<Integer> told = new ArrayList<>();
      bench.announcer().add(new WhenFed(() -> told.add(bench.shots("lane").size())));
      lane.arrow(10 * SECOND, 7, 1);
      lane.passTimeUntil(11 * SECOND);
      assertThat(told).containsExactly(1);
      FullDisk.during(
          () -> {
            lane.say(12 * SECOND, "K,7,1,S," + 24 * SECOND); // the next arrow: light
            lane.arrow(13 * SECOND, 7, 5);
            lane.say(14 * SECOND, "K,7,1,S," + 28 * SECOND); // heavy
            lane.arrow(15 * SECOND, 7, 9);
            lane.passTimeUntil(60 * SECOND);
            assertThat(bench.shots("lane")).hasSize(1);
            assertThat(told).containsExactly(1);
            StoreState red = last(lane);
            assertThat(red.trouble()).contains(Phrase.of("store.input_output", folder));
            assertThat(red.waiting()).isEqualTo(2);
            assertThat(red.full()).isFalse();
          });
      lane.passTimeUntil(63 * SECOND);
      assertThat(arrows(bench)).containsExactly("none", "light", "heavy");
      assertThat(bench.shots("lane").stream().map(Shot::fired))
          .allMatch(fired -> fired.isBefore(HandFedStation.STARTED.plusSeconds(16)));
      assertThat(told.get(told.size() - 1)).isEqualTo(3);
      assertThat(last(lane).trouble()).isEmpty();
      assertThat(last(lane).waiting()).isZero();
      lane.arrow(70 * SECOND, 7, 13);
      lane.passTimeUntil(71 * SECOND);
      assertThat(arrows(bench)).containsExactly("none", "light", "heavy", "heavy");
    }
  }

  @Test
  void withoutRoomInMemoryTheBoardIsAskedAfterwardsForWhatItKeeps() {
    try (RangeBench bench = bench()) {
      HandFedStation lane = online(bench, ROOM);
      int shots = ROOM + 5;
      long at = (shots + 5) * SECOND;
      FullDisk.during(
          () -> {
            for (int i = 0; i < shots; i++) {
              lane.beat(i * SECOND + SECOND / 2, 7, 4 * i);
              lane.arrow((i + 1) * SECOND, 7, 4 * i + 1);
            }
            lane.passTimeUntil(at);
            assertThat(last(lane).full()).isTrue();
            assertThat(last(lane).waiting()).isEqualTo(ROOM);
            assertThat(lane.link().state()).isEqualTo(LinkState.State.WAITING); // not offline
            assertThat(English.say(lane.link().sentence())).contains("isn't listened to");
          });
      int asked = lane.asked().length();
      lane.passTimeUntil(at + 3 * SECOND);
      assertThat(bench.shots("lane")).hasSize(ROOM);
      assertThat(lane.asked().substring(asked)).startsWith("?\n");
      lane.identity(at + 4 * SECOND, 7);
      int firstLost = 4 * ROOM + 1;
      assertThat(lane.asked()).contains("R,7," + firstLost + "\n");
      lane.beat(at + 5 * SECOND, 7, 4 * shots);
      for (int i = 0; i < 5; i++) { // the board says them again
        sayAgain(lane, at + 6 * SECOND, firstLost + 4 * i, (ROOM + i + 1) * SECOND);
      }
      lane.passTimeUntil(at + 7 * SECOND);
      assertThat(bench.shots("lane")).hasSize(shots).allMatch(Shot::counts);
      assertThat(lane.link().state()).isEqualTo(LinkState.State.ONLINE);
    }
  }

  @Test
  void whatTheBoardNoLongerKeepsIsCountedAndShown() {
    try (RangeBench bench = bench()) {
      HandFedStation lane = online(bench, ROOM);
      FullDisk.during(
          () -> {
            for (int i = 0; i < ROOM + 2; i++) {
              lane.arrow((i + 1) * SECOND, 7, 4 * i + 1);
            }
          });
      long at = (ROOM + 10) * SECOND;
      lane.passTimeUntil(at);
      lane.identity(at, 7);
      lane.beat(at + 1000, 7, 4 * (ROOM + 2));
      lane.say(at + 2000, "M,7,%d,%d".formatted(4 * ROOM + 1, 4 * ROOM + 8));
      lane.passTimeUntil(at + 3 * SECOND);
      assertThat(lane.faults().of(Fault.LOST_EDGE)).isEqualTo(8);
      assertThat(bench.shots("lane"))
          .filteredOn(shot -> !shot.counts())
          .singleElement()
          .satisfies(lost -> assertThat(lost.figure().reason()).contains("lost"));
    }
  }

  @Test
  void aBoardFirstHeardMeanwhileIsAskedForAllOfItAgain() {
    try (RangeBench bench = bench()) {
      HandFedStation lane = new HandFedStation(bench, "lane");
      FullDisk.during(
          () -> {
            lane.plugIn(0);
            lane.identity(1000, 7);
            lane.beat(2000, 7, 0);
            lane.arrow(SECOND, 7, 1);
            lane.passTimeUntil(30 * SECOND);
            assertThat(lane.stores()).hasSize(1); // red all the time
          });
      lane.passTimeUntil(33 * SECOND);
      assertThat(last(lane).trouble()).isEmpty();
      lane.identity(34 * SECOND, 7);
      assertThat(lane.asked()).contains("R,7,1\n");
      lane.beat(34 * SECOND + 1000, 7, 4);
      sayAgain(lane, 34 * SECOND + 2000, 1, SECOND);
      lane.passTimeUntil(36 * SECOND);
      assertThat(bench.shots("lane")).hasSize(1);
    }
  }

  @Test
  void atTheEndItIsToldHowMuchGoesWithTheMemory() {
    try (RangeBench bench = bench()) {
      HandFedStation lane = online(bench);
      FullDisk.during(
          () -> {
            lane.arrow(10 * SECOND, 7, 1);
            lane.end(11 * SECOND);
          });
      assertThat(last(lane).waiting()).isEqualTo(1);
      assertThat(last(lane).trouble()).isPresent();
    }
  }

  @Test
  void whatAPersonSaysIsRefusedInOneSentenceAndTheNextWordIsHeard() {
    try (RangeBench bench = bench()) {
      FullDisk.during(
          () -> {
            assertThatThrownBy(
                    () ->
                        bench.commands().tag("lane", Optional.empty(), Optional.of("light"), "me"))
                .isInstanceOf(StoreUnavailable.class)
                .hasMessageStartingWith("store.input_output|");
          });
      bench.commands().tag("lane", Optional.empty(), Optional.of("light"), "me");
      assertThat(bench.tables().query("SELECT count(*) FROM tag_change")).containsExactly("1");
    }
  }
}
