package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Truth: what the generator sent through its gates. */
@Tag("slow")
class DisturbedRangeTest {
  /** -Dcastwell.seed=N begins there, as a failure says. */
  private static final long FIRST_SEED = Seed.of(DisturbedRangeTest.class);

  private static final int SEEDS = Integer.getInteger("castwell.seeds", 200);
  private static final int ONE_NAME = 30;
  private static final int AGAIN_EVERY = 10;

  @TempDir Path folder;

  @Test
  void everyPassageIsWhatItWas() throws Exception {
    try (RangeBench bench = RangeBench.in(folder)) {
      for (long seed = FIRST_SEED; seed < FIRST_SEED + SEEDS; seed++) {
        check(bench, DisturbedRange.of(seed), seed);
      }
    }
  }

  /**
   * Boards of one name, with boots and edge numbers alike: each keeps its own. The seeds are fixed,
   * since where first heartbeats and first edges are lost as well nobody could tell them apart.
   */
  @Test
  void boardsOfOneNameAreToldApart() throws Exception {
    try (RangeBench bench = RangeBench.in(folder)) {
      for (long seed = 1; seed <= ONE_NAME; seed++) {
        check(bench, DisturbedRange.of(seed, "twin"), seed);
      }
    }
  }

  private void check(RangeBench bench, DisturbedRange range, long seed) throws Exception {
    Path file = range.writeTo(folder);
    try {
      bench.replay(file);
      TruthCheck.check(bench.shots(range.name()), range.truths(), range.speedTolerance());
      if (seed % AGAIN_EVERY == 0) {
        Map<String, Long> before = bench.tables().rows();
        bench.replay(file);
        assertThat(bench.tables().rows()).as("rows after a second replay").isEqualTo(before);
      }
    } catch (AssertionError | RuntimeException e) {
      throw new AssertionError("seed " + seed + ": " + e.getMessage(), e);
    }
    Files.delete(file);
  }
}
