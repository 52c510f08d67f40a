package castwell.analysis.statistic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Rank tests and many p values, against R 4.2.2. */
class RanksTest {
  /** p.adjust(c(.01, .04, .03, .005), "holm") */
  @Test
  void holm() {
    assertThat(Holm.adjust(.01, .04, .03, .005))
        .containsExactly(new double[] {.03, .06, .06, .02}, within(1e-15));
    assertThat(Holm.adjust()).isEmpty();
  }

  /**
   * wilcox.test(c(1.1, 2.2, 3.3), c(4.4, 5.5, 6.6, 7.7)): p = 0.05714286, which two groups' exact
   * rank test is.
   */
  @Test
  void twoGroups() {
    double[] values = {1.1, 2.2, 3.3, 4.4, 5.5, 6.6, 7.7};
    RankGroups test = RankGroups.test(values, new int[] {0, 0, 0, 1, 1, 1, 1});

    assertThat(test.pValue()).isCloseTo(0.05714286, within(5e-9));
    assertThat(test.exact()).isTrue();
  }

  /** kruskal.test(1:12, rep(1:3, each = 4)): chi-squared 9.8462, p 0.007277. */
  @Test
  void manyValuesByChiSquared() {
    RankGroups test =
        RankGroups.test(
            IntStream.rangeClosed(1, 12).asDoubleStream().toArray(),
            new int[] {0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2});

    assertThat(test.h()).isCloseTo(9.8462, within(5e-5));
    assertThat(test.pValue()).isCloseTo(0.007277, within(5e-7));
    assertThat(test.exact()).isFalse();
  }

  /** cor(c(1, 2, 2, 4), c(1, 3, 2, 4), method = "spearman"): 0.9486833. */
  @Test
  void equalValuesShareTheirRank() {
    assertThat(Spearman.test(new double[] {1, 2, 2, 4}, new double[] {1, 3, 2, 4}).rho())
        .isCloseTo(0.9486833, within(5e-8));
  }

  @Test
  void noSpreadTellsNothing() {
    Spearman test = Spearman.test(new double[] {1, 1, 1}, new double[] {1, 2, 3});

    assertThat(test.rho()).isNaN();
    assertThat(test.pValue()).isEqualTo(1);
  }
}
