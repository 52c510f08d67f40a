package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.capture.store.Shot;
import castwell.capture.wire.Fault;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Random and mutated bytes from the wire to the disk: nothing throws, every shot is made of what
 * intact sentences told and no other is there, and every intact edge is stored. 100 million bytes
 * of these, and as many for the reader of the wire alone:
 *
 * <pre>mvn -pl analysis,capture test -Dtest=WildBytesTest \
 *   -Dsurefire.failIfNoSpecifiedTests=false -Dcastwell.bytes=100000000</pre>
 */
@Tag("slow")
class WildBytesTest {
  private static final long BYTES = Long.getLong("castwell.bytes", 2_000_000);
  private static final int A_PART = 1_000_000;

  private final long seed = Seed.of(WildBytesTest.class);

  @TempDir Path folder;

  @Test
  void noShotThatIntactSentencesDidNotMake() {
    long shots = 0;
    for (long done = 0, part = 0; done < BYTES; done += A_PART, part++) {
      try {
        shots += part % 2 == 0 ? spoilt(seed + part) : forged(seed + part);
      } catch (AssertionError | RuntimeException e) {
        throw new AssertionError("castwell.seed " + (seed + part) + ": " + e.getMessage(), e);
      }
    }
    System.out.println(BYTES + " bytes, " + shots + " arrows shot whole and read so");
  }

  /** Nothing but arrows whose four edges came through counts, and each at its speed. */
  private long spoilt(long seed) {
    Random random = new Random(seed);
    WildStream stream = new WildStream(random, false, A_PART);
    while (stream.isForgedByChance()) {
      stream = new WildStream(random, false, A_PART);
    }
    Path data = folder.resolve("spoilt-" + seed);
    try (RangeBench bench = RangeBench.in(data)) {
      HandFedStation lane = played(stream, bench);
      List<IntactEdge> told = IntactEdge.in(stream.all());
      EdgesHeld.check(data, told);
      assertThat(lane.faults().all())
          .containsKeys(Fault.GARBAGE, Fault.TRUNCATED, Fault.TOO_LONG, Fault.BAD_CRC)
          .doesNotContainKeys(Fault.BAD_FIELD, Fault.NAME_REUSED, Fault.BOARD_RESTARTED);
      return checkShots(stream, told, bench.shots("range"));
    }
  }

  private static long checkShots(WildStream stream, List<IntactEdge> told, List<Shot> shots) {
    Set<IntactEdge> intact = new HashSet<>(told);
    Map<Integer, Double> whole = new HashMap<>();
    for (WildStream.Arrow arrow : stream.arrows()) {
      if (intact.containsAll(arrow.edges())) {
        whole.put(arrow.edges().get(0).number(), arrow.mps());
      }
    }
    Map<Integer, Double> counted = new HashMap<>();
    for (Shot shot : shots) {
      if (shot.counts()) {
        counted.put(
            shot.byGates().orElseThrow().firstEdge(), shot.figure().speedMps().orElseThrow());
      }
    }
    assertThat(counted.keySet()).isEqualTo(whole.keySet());
    counted.forEach(
        (edge, mps) ->
            assertThat(mps).as("edge " + edge).isCloseTo(whole.get(edge), within(mps * 5e-4)));
    assertThat(whole.size()).isGreaterThan(stream.arrows().size() / 2);
    assertThat(shots.size()).isLessThanOrEqualTo(stream.arrows().size());
    return whole.size();
  }

  /** Sentences with a right check sum over wild fields are intact, so they may make shots. */
  private long forged(long seed) {
    WildStream stream = new WildStream(new Random(seed), true, A_PART);
    Path data = folder.resolve("forged-" + seed);
    try (RangeBench bench = RangeBench.in(data)) {
      HandFedStation lane = played(stream, bench);
      EdgesHeld.check(data, IntactEdge.in(stream.all()));
      assertThat(lane.faults().all())
          .containsKeys(Fault.BAD_FIELD, Fault.UNKNOWN_SENTENCE, Fault.NAME_REUSED);
      return 0;
    }
  }

  private static HandFedStation played(WildStream stream, RangeBench bench) {
    HandFedStation lane = new HandFedStation(bench, "range");
    lane.plugIn(0);
    long micros = 0;
    for (WildStream.Portion portion : stream.portions()) {
      micros = portion.micros();
      lane.receive(micros, portion.bytes());
    }
    lane.receive(micros, new byte[] {'\n'});
    lane.passTimeUntil(micros + 60_000_000);
    lane.end(micros + 60_000_000);
    return lane;
  }
}
