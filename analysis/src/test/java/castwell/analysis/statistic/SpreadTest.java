package castwell.analysis.statistic;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** R 4.2.2: median(x), mad(x, constant = 1), diff(range(x)). */
class SpreadTest {
  private static final double[] SIX = {42, 4, 23, 8, 16, 15};
  private static final double[] FIVE = {4, 23, 8, 16, 15};

  @Test
  void asInR() {
    assertThat(Median.of(SIX)).isEqualTo(15.5);
    assertThat(MedianAbsoluteDeviation.of(SIX)).isEqualTo(7.5);
    assertThat(ExtremeSpread.of(SIX)).isEqualTo(38);
    assertThat(Median.of(FIVE)).isEqualTo(15);
    assertThat(MedianAbsoluteDeviation.of(FIVE)).isEqualTo(7);
  }

  @Test
  void noneHaveNone() {
    assertThat(Median.of()).isNaN();
    assertThat(MedianAbsoluteDeviation.of()).isNaN();
    assertThat(ExtremeSpread.of()).isNaN();
  }

  @Test
  void oneDoesNotSpread() {
    assertThat(Median.of(7)).isEqualTo(7);
    assertThat(MedianAbsoluteDeviation.of(7)).isZero();
    assertThat(ExtremeSpread.of(7)).isZero();
  }

  @Test
  void whatIsNoNumberIsNotPassedOver() {
    assertThat(Median.of(1, Double.NaN, 3)).isNaN();
    assertThat(MedianAbsoluteDeviation.of(1, Double.NaN, 3)).isNaN();
    assertThat(ExtremeSpread.of(1, Double.NaN, 3)).isNaN();
  }

  @Test
  void twoPairsHaveNoRankCorrelation() {
    Spearman test = Spearman.test(new double[] {1, 2}, new double[] {5, 9});

    assertThat(test.rho()).isNaN();
    assertThat(test.pValue()).isEqualTo(1);
  }
}
