package castwell.analysis.tickrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class DatedEdgeTest {
  private static final long SEED = Seed.of(DatedEdgeTest.class);
  private static final double HZ = 2e6;

  @Test
  void isDatedWithinTheJitterBeforeBetweenAndAfterTheBeats() {
    Beats beats = new Beats(HZ, Beats.uniform(1e-3), new SplittableRandom(SEED));
    BeatSegment segment = beats.segment(60);
    for (double ago : new double[] {70, 30.3, 0, -5}) {
      double trueSeconds = beats.nowSeconds() - ago;
      double dated = segment.hostSecondsAt(Math.round(trueSeconds * HZ)).orElseThrow();

      assertThat(dated).as("seed %d", SEED).isCloseTo(trueSeconds, within(1e-3));
    }
  }

  @Test
  void withoutJitterTheLineIsExact() {
    BeatSegment segment = new Beats(HZ, random -> 0, new SplittableRandom(SEED)).segment(60);

    assertThat(segment.rate().orElseThrow().hz()).isCloseTo(HZ, within(HZ * 1e-7));
    assertThat(segment.rate().orElseThrow().relativeU()).isPositive();
  }
}
