package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several shots that were given up together, and came after all. */
class LongLostTest {
  private static final long SECOND = 1_000_000;
  private static final int SHOTS = 6;

  @TempDir Path folder;
  private final long seed = Seed.of(LongLostTest.class);

  /** The first arrives; of the others a beat tells, and they are given up. */
  private static HandFedStation lost(RangeBench bench) {
    HandFedStation lane = new HandFedStation(bench, "lane");
    lane.plugIn(0);
    lane.identity(1000, 7);
    lane.beat(2000, 7, 0);
    lane.arrow(SECOND, 7, 1);
    lane.passTimeUntil(2 * SECOND);
    lane.beat(10 * SECOND, 7, 4 * SHOTS);
    lane.passTimeUntil(12 * SECOND);
    assertThat(bench.shots("lane")).hasSize(2);
    return lane;
  }

  private static void say(HandFedStation lane, int edge) {
    int shot = (edge - 1) / 4;
    lane.edgeOfArrow(12 * SECOND, 7, 4 * shot + 1, (edge - 1) % 4, (shot + 1) * SECOND);
  }

  private static void eachIsAShot(RangeBench bench) {
    assertThat(bench.shots("lane"))
        .hasSize(SHOTS)
        .allMatch(Shot::counts)
        .extracting(Shot::shotId)
        .contains("gate-1.7.1", "gate-1.7.5")
        .doesNotHaveDuplicates();
  }

  @Test
  void inTheirOrderEachIsAShotOfItsOwn() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = lost(bench);
      IntStream.rangeClosed(5, 4 * SHOTS).forEach(edge -> say(lane, edge));
      lane.passTimeUntil(14 * SECOND);
      eachIsAShot(bench);
    }
  }

  @Test
  void inAnyOrderEachIsAShotOfItsOwn() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = lost(bench);
      List<Integer> edges = new ArrayList<>(IntStream.rangeClosed(5, 4 * SHOTS).boxed().toList());
      Collections.shuffle(edges, new Random(seed));
      edges.forEach(edge -> say(lane, edge));
      lane.passTimeUntil(14 * SECOND);
      eachIsAShot(bench);
    }
  }
}
