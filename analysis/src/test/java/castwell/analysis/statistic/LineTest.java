package castwell.analysis.statistic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** What a fit does at the edges; no source but arithmetic. */
class LineTest {
  @Test
  void farFromZeroALineStaysExact() {
    double[] x = {1e12, 1e12 + 1, 1e12 + 2, 1e12 + 3, 1e12 + 4};
    double[] y = {1e9, 1e9 + 0.5, 1e9 + 1, 1e9 + 1.5, 1e9 + 2};

    StraightLine line = StraightLine.fit(x, y).orElseThrow();

    assertThat(line.slope()).isEqualTo(0.5);
    assertThat(line.at(1e12 + 3)).isEqualTo(1e9 + 1.5);
    assertThat(line.residualSd()).isZero();
  }

  @Test
  void twoPointsSayNothingOfTheirScatter() {
    StraightLine line = StraightLine.fit(new double[] {1, 2}, new double[] {3, 5}).orElseThrow();

    assertThat(line.at(3)).isEqualTo(7);
    assertThat(line.residualSd()).isNaN();
  }

  @Test
  void pointsAboveEachOtherMakeNoLine() {
    assertThat(StraightLine.fit(new double[] {2, 2}, new double[] {3, 5})).isEmpty();
  }

  @Test
  void everyPointNeedsBothItsNumbers() {
    assertThatThrownBy(() -> StraightLine.fit(new double[] {1, 2, 3}, new double[] {3, 5}))
        .hasMessage("a line needs a y for each x, not 2 for 3");
  }
}
