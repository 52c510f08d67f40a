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

  /** By hand: .05 / 4 for the least, .05 / 3 for the next, which isn't below it and ends it. */
  @Test
  void levelsAtWhichHolmLooked() {
    assertThat(Holm.levels(.05, .001, .9, .02, .03))
        .containsExactly(new double[] {.05 / 4, .05 / 3, .05 / 3, .05 / 3}, within(1e-15));
    assertThat(Holm.levels(.05, .04, .01)).containsExactly(new double[] {.05, .025}, within(1e-15));
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

  /** All 5040 orders of rank(y) in R, by cor(..., method = "spearman"). */
  @Test
  void equalValuesHaveAnExactShareToo() {
    Spearman test =
        Spearman.test(new double[] {1, 2, 2, 4, 5, 5, 7}, new double[] {3, 1, 4, 4, 6, 9, 8});

    assertThat(test.rho()).isCloseTo(0.85324691797293, within(1e-13));
    assertThat(test.pValue()).isCloseTo(0.0206349206349206, within(1e-15));
    assertThat(test.exact()).isTrue();
  }

  /** cor.test(x, y, method = "spearman", exact = FALSE), with two equal x. */
  @Test
  void manyPairsByStudentsT() {
    double[] x = {2.1, 3.3, 1.0, 4.8, 5.9, 7.7, 6.2, 9.9, 8.4, 10.6, 5.9};
    Spearman test = Spearman.test(x, new double[] {1, 2, 5, 4, 3, 8, 7, 6, 9, 12, 10});

    assertThat(test.rho()).isCloseTo(0.724375455649346, within(1e-13));
    assertThat(test.pValue()).isCloseTo(0.0116965672688233, within(1e-13));
    assertThat(test.exact()).isFalse();
  }

  /** All 5040 orders of the values in R, by kruskal.test. */
  @Test
  void threeGroupsWithEqualValues() {
    RankGroups test =
        RankGroups.test(
            new double[] {1.2, 1.5, 1.5, 2.1, 3.0, 2.8, 1.9}, new int[] {0, 0, 0, 1, 1, 2, 2});

    assertThat(test.h()).isCloseTo(4.8, within(1e-13));
    assertThat(test.pValue()).isCloseTo(0.0571428571428571, within(1e-15));
  }

  @Test
  void noSpreadTellsNothing() {
    Spearman test = Spearman.test(new double[] {1, 1, 1}, new double[] {1, 2, 3});

    assertThat(test.rho()).isNaN();
    assertThat(test.pValue()).isEqualTo(1);
  }
}
