package castwell.analysis.tickrate;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.analysis.speed.TickRate;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The stated uncertainty against the errors of simulated measurements (JCGM 101:2008). */
class OneSidedDelayTest {
  private static final long SEED = Seed.of(OneSidedDelayTest.class);
  private static final double HZ = 2e6;

  static Stream<Named<ToDoubleFunction<SplittableRandom>>> delays() {
    return Stream.of(
        Named.of("uniform, 1 ms", Beats.uniform(1e-3)),
        Named.of("uniform, 4 ms", Beats.uniform(4e-3)),
        Named.of("exponential, 1 ms", Beats.exponential(1e-3)),
        Named.of("1 ms with 5 % stalls of 50 ms", Beats.stalling(1e-3, 0.05, 0.05)));
  }

  @ParameterizedTest
  @MethodSource("delays")
  void twiceTheUncertaintyCoversNineteenOfTwenty(ToDoubleFunction<SplittableRandom> delay) {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int beats : new int[] {8, 30, 120, 500}) {
      int trials = 2000;
      int covered = 0;
      for (int i = 0; i < trials; i++) {
        TickRate rate = new Beats(HZ, delay, random).segment(beats).rate().orElseThrow();
        if (Math.abs(rate.hz() / HZ - 1) <= 2 * rate.relativeU()) {
          covered++;
        }
      }
      assertThat((double) covered / trials)
          .as("seed %d, %d beats", SEED, beats)
          .isGreaterThanOrEqualTo(0.95);
    }
  }
}
