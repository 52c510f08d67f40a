package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Ticks come unwrapped: where the counter stands must not change the speed by a single bit. */
class TickWrapTest {

  @ParameterizedTest
  @ValueSource(longs = {1, 0x7FFF_FFF0L, 0xFFFF_FFF0L, 0xFFFF_FFFF_FFF0L, 1L << 52})
  void speedIsTheSameWhereverTheCounterStands(long firstTicks) {
    Flight arrow = Flight.ARROW;

    assertThat(arrow.measure(arrow.passage(firstTicks))).isEqualTo(arrow.measure(arrow.passage()));
  }
}
