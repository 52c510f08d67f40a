package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.English;
import castwell.capture.station.LinkState;
import castwell.capture.station.LinkState.State;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No heartbeat for 3 s: offline. Board protocol, what a host must do, 5. */
class OfflineTest {
  @TempDir Path folder;

  private RangeBench bench;
  private HandFedStation lane;

  @BeforeEach
  void begin() {
    bench = RangeBench.in(folder);
    lane = new HandFedStation(bench, "lane");
  }

  @AfterEach
  void end() {
    bench.close();
  }

  @Test
  void offlineAfterThreeSecondsAndOnlineAgain() {
    assertThat(lane.link().state()).isEqualTo(State.SEARCHING);
    lane.plugIn(1_000_000);
    assertThat(lane.link().state()).isEqualTo(State.WAITING);
    lane.identity(1_100_000, 7);
    lane.beat(1_200_000, 7, 0);
    assertThat(lane.link().state()).isEqualTo(State.ONLINE);
    lane.passTimeUntil(4_199_999);
    assertThat(lane.link().state()).isEqualTo(State.ONLINE);
    lane.passTimeUntil(4_200_001);
    assertThat(lane.link().state()).isEqualTo(State.OFFLINE);
    assertThat(English.say(lane.link().sentence())).contains("gate-1").contains("3 s");
    lane.beat(9_000_000, 7, 0);
    assertThat(lane.link().state()).isEqualTo(State.ONLINE);
    assertThat(lane.states())
        .extracting(LinkState::state)
        .containsSubsequence(State.WAITING, State.ONLINE, State.OFFLINE, State.ONLINE);
  }

  @Test
  void edgesAreNoHeartbeat() {
    lane.plugIn(1_000_000);
    lane.identity(1_100_000, 7);
    lane.beat(1_200_000, 7, 0);
    lane.arrow(4_000_000, 7, 1);
    lane.passTimeUntil(4_300_000);
    assertThat(lane.link().state()).isEqualTo(State.OFFLINE);
    assertThat(bench.shots("lane")).hasSize(1);
  }

  @Test
  void aBoardThatNeverBeatsIsOfflineToo() {
    lane.plugIn(1_000_000);
    lane.passTimeUntil(4_100_000);
    assertThat(lane.link().state()).isEqualTo(State.OFFLINE);
  }

  @Test
  void aPortGoneIsUnpluggedAtOnceAndStaysSo() {
    lane.plugIn(1_000_000);
    lane.identity(1_100_000, 7);
    lane.beat(1_200_000, 7, 0);
    lane.pullOut(1_300_000);
    assertThat(lane.link().state()).isEqualTo(State.UNPLUGGED);
    lane.passTimeUntil(60_000_000);
    assertThat(lane.link().state()).isEqualTo(State.UNPLUGGED);
    lane.plugIn(61_000_000);
    lane.beat(61_100_000, 7, 0);
    assertThat(lane.link().state()).isEqualTo(State.ONLINE);
    assertThat(lane.asked()).endsWith("?\n");
  }
}
