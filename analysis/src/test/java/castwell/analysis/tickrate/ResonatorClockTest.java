package castwell.analysis.tickrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.TickRate;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Bounds: common practice, no source; 20 ppm is a fifth of the speed's last honest digit. */
class ResonatorClockTest {
  private static final long SEED = Seed.of(ResonatorClockTest.class);
  private static final double NOMINAL_HZ = 2e6;
  private static final double HOST_CLOCK_U = 10e-6;

  @Test
  void farOffWithFourMillisecondsOfJitterComesOutWithinTwentyPpm() {
    double trueHz = NOMINAL_HZ * (1 - 3732e-6);
    TickRate nominal = TickRate.nominal(NOMINAL_HZ, Oscillator.RESONATOR);
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 100; i++) {
      BeatSegment segment = new Beats(trueHz, Beats.uniform(4e-3), random).segment(497);
      TickRate rate =
          TickRates.combine(nominal, List.of(segment.rate().orElseThrow()), HOST_CLOCK_U);

      assertThat((rate.hz() / trueHz - 1) * 1e6)
          .as("seed %d, round %d", SEED, i)
          .isCloseTo(0, within(20.0));
    }
  }

  @Test
  void aTrueClockWithOneMillisecondOfJitterIsWithinTenPpmAfterFortyFiveSeconds() {
    SplittableRandom random = new SplittableRandom(SEED);
    int rounds = 1000;
    int within = 0;
    for (int i = 0; i < rounds; i++) {
      TickRate rate =
          new Beats(NOMINAL_HZ, Beats.uniform(1e-3), random).segment(45).rate().orElseThrow();
      within += Math.abs(rate.hz() / NOMINAL_HZ - 1) < 10e-6 ? 1 : 0;
    }

    assertThat(within / (double) rounds).as("seed %d", SEED).isGreaterThan(0.95);
  }
}
