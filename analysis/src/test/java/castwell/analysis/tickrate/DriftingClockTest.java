package castwell.analysis.tickrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** A board that warms up all day: every beat is a corner of the hull. */
class DriftingClockTest {

  @Test
  void givesTheMiddleOfTheDaysRatesThoughItKeepsFewOfThem() {
    BeatSegment segment = new BeatSegment();
    int beats = 86_400;
    double drift = 100e-6 / beats;
    for (int i = 0; i < beats; i++) {
      double seconds = i;
      // The counter slows down, so the seconds curve upwards as a function of the ticks.
      segment.add(Math.round(2e6 * (seconds - drift / 2 * seconds * seconds)), seconds);
    }
    var rate = segment.rate().orElseThrow();

    assertThat((rate.hz() / 2e6 - 1) * 1e6).isCloseTo(-50, within(1.0));
  }
}
