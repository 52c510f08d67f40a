package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.speed.Flight;
import org.junit.jupiter.api.Test;

/** The default bounds, 20 and 130 m/s: common practice, no source. */
class OutlandishSpeedTest {

  @Test
  void tooSlow() {
    assertThat(Bench.codes(new Flight(19.9, 0.74).passage())).containsExactly("too-slow");
    assertThat(Bench.codes(new Flight(20.1, 0.74).passage())).isEmpty();
    assertThat(Bench.told(new Flight(6.096, 0.74).passage()))
        .isEqualTo("verdict.too_slow|6.0960 m/s|20.0000 m/s");
  }

  @Test
  void tooFast() {
    assertThat(Bench.codes(new Flight(130.5, 0.74).passage())).containsExactly("too-fast");
    assertThat(Bench.codes(new Flight(129.5, 0.74).passage())).isEmpty();
    assertThat(Bench.told(new Flight(304.8, 0.74).passage()))
        .isEqualTo("verdict.too_fast|304.8000 m/s|130.0000 m/s");
  }
}
