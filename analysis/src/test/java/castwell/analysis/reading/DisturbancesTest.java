package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A little of every disturbance; much of it by {@code sh .ci/measure reading}. */
@Tag("slow")
class DisturbancesTest {
  private static final int EACH = 40;

  @Test
  void arrowsCountWithinTheirUncertaintyAndNothingElseDoes() {
    long seed = Seed.of(DisturbancesTest.class);
    Score sum =
        Disturbance.all().stream()
            .filter(disturbance -> !disturbance.mimics())
            .map(disturbance -> Score.of(disturbance, EACH, seed))
            .reduce(new Score(), Score::plus);

    assertThat(sum.passages).isEqualTo(50 * EACH);
    assertThat(sum.told).isGreaterThan(27 * EACH);
    // Chance: three standard deviations of so few below what 20,000 passages are held to.
    assertThat((double) sum.counted / sum.told)
        .isGreaterThan(0.995 - 3 * deviation(0.005, sum.told));
    assertThat((double) sum.within / sum.judged)
        .isGreaterThan(0.98 - 3 * deviation(0.02, sum.judged));
    assertThat((double) sum.wrong / sum.none).isLessThan(0.001 + 3 * deviation(0.001, sum.none));
  }

  private static double deviation(double share, int of) {
    return Math.sqrt(share * (1 - share) / of);
  }
}
