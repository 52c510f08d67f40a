package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.store.Figure;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The identity says how late each gate's stamps are by construction, and the host subtracts it:
 * board protocol, hz and latency. Source of the figures: v = d / t by hand.
 */
class StampLatencyTest {
  @TempDir Path folder;

  @Test
  void eachGatesLatencyIsSubtracted() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = new HandFedStation(bench, "lane");
      lane.plugIn(0);
      lane.say(1000, "I,1,hand-1,gate-1,7,2000000,2,100000,-60000,64,P");
      lane.beat(2000, 7, 0);
      lane.arrow(1_000_000, 7, 1);
      lane.end(2_000_000);
      Figure figure = bench.shots("lane").get(0).figure();
      // B - A = (10 ms + 60 us) - (0 - 100 us) from edge to edge
      assertThat(figure.speedMps().orElseThrow()).isCloseTo(0.6096 / 10.160e-3, within(1e-9));
      // Both ends of one gate are late alike, so its blocked time is what it was.
      assertThat(figure.lengthM().orElseThrow())
          .isCloseTo(0.6096 / 10.160e-3 * 11.811e-3, within(1e-9));
    }
  }
}
