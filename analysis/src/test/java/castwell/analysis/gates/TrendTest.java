package castwell.analysis.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class TrendTest {
  private static final double SPACING_M = 0.6096;

  /** A shot a minute; the residual is off its line to either side by turns. */
  private static Trend of(int n, double changeM, double offM) {
    List<GateShot> shots = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double off = i % 4 == 0 || i % 4 == 3 ? offM : -offM;
      shots.add(ShotOf.residual(60.0 * i, changeM * i / (n - 1) + off));
    }
    return Trend.of(shots, FrontOverTail.of(shots, 0.001).orElseThrow()).orElseThrow();
  }

  // By hand: + - - + is at right angles to a line through four equal steps, and so are its repeats
  // to one through all; s2 = 20 off2 / 18, and the x, 0 to 19, have squares of 665 from their mean.
  @Test
  void changeAndItsUncertainty() {
    Trend trend = of(20, 0.003, 0.0005);
    assertThat(trend.n()).isEqualTo(20);
    assertThat(trend.seconds()).isEqualTo(19 * 60);
    assertThat(trend.changeM().value()).isCloseTo(0.003, within(1e-12));
    assertThat(trend.changeM().standardUncertainty())
        .isCloseTo(19 * 0.0005 * Math.sqrt(20.0 / 18 / 665), within(1e-12));
    assertThat(trend.named(SPACING_M)).isTrue();
  }

  @Test
  void whatIsTooLittleOrMayBeChanceIsNotNamed() {
    assertThat(of(20, 0.0005, 0.0001).named(SPACING_M)).isFalse();
    assertThat(of(20, 0.002, 0.0018).named(SPACING_M)).isFalse();
  }

  @Test
  void shotsOfOneInstantHaveNoTrend() {
    List<GateShot> shots = Collections.nCopies(12, ShotOf.residual(7, 0.001));
    assertThat(Trend.of(shots, FrontOverTail.of(shots, 0.001).orElseThrow())).isEmpty();
  }
}
