package castwell.analysis.tickrate;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class TooFewBeatsTest {
  private final BeatSegment segment = new BeatSegment();

  @Test
  void noneTellNothing() {
    assertThat(segment.rate()).isEmpty();
    assertThat(segment.hostSecondsAt(1)).isEmpty();
  }

  @Test
  void sevenTellNothingAndTheEighthDoes() {
    add(7, 1);
    assertThat(segment.rate()).isEmpty();

    segment.add(7 * 2_000_000L, 7);
    assertThat(segment.rate()).isPresent();
  }

  @Test
  void lessThanFiveSecondsTellNothing() {
    add(49, 0.1);

    assertThat(segment.rate()).isEmpty();
  }

  @Test
  void aBeatSentTwiceIsOne() {
    for (int i = 0; i < 20; i++) {
      segment.add(2_000_000L * (i / 3), i / 3);
    }

    assertThat(segment.rate()).isEmpty();
  }

  @Test
  void aHostClockThatStandsStillMakesNoRate() {
    for (int i = 0; i < 20; i++) {
      segment.add(2_000_000L * i, 0);
    }

    assertThat(segment.rate()).isEmpty();
  }

  private void add(int beats, double periodSeconds) {
    for (int i = 0; i < beats; i++) {
      segment.add(Math.round(2e6 * periodSeconds * i), periodSeconds * i);
    }
  }
}
