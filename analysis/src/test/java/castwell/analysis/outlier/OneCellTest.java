package castwell.analysis.outlier;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.statistic.Nist;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The tests for one cell alone, against their published examples. */
class OneCellTest {
  private static final double[] ROSNER = Nist.column("rosner54.csv");

  /** NIST/SEMATECH e-Handbook, 1.3.5.17.1. */
  private static final double[] GRUBBS = {
    199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57
  };

  /**
   * Rosner (1983); NIST/SEMATECH e-Handbook, 1.3.5.17.3, prints these cut off after three decimals:
   * the first two fail, the third doesn't, and so three are outliers.
   */
  @Test
  void rosnersData() {
    GeneralizedEsd test = GeneralizedEsd.test(ROSNER, 10, 0.05);

    assertThat(test.statistics().stream().mapToDouble(r -> r).toArray())
        .containsExactly(
            new double[] {3.118, 2.942, 3.179, 2.810, 2.815, 2.848, 2.279, 2.310, 2.101, 2.067},
            within(1e-3));
    assertThat(test.critical().stream().mapToDouble(r -> r).toArray())
        .containsExactly(
            new double[] {3.158, 3.151, 3.143, 3.136, 3.128, 3.120, 3.111, 3.103, 3.094, 3.085},
            within(1e-3));
    assertThat(test.outliers()).extracting(at -> ROSNER[at]).containsExactly(6.01, 5.42, 5.34);
  }

  /** The two-sided value was worked out from the formula apart from this project. */
  @Test
  void grubbsExample() {
    Grubbs test = Grubbs.test(GRUBBS, 0.05);

    assertThat(test.statistic()).isCloseTo(2.4687646112, within(1e-9));
    assertThat(GRUBBS[test.index()]).isEqualTo(245.57);
    assertThat(test.criticalOneSided()).isCloseTo(2.0316520015, within(1e-9));
    assertThat(test.criticalTwoSided()).isCloseTo(2.1266450872, within(1e-9));
    assertThat(test.isOutlier()).isTrue();
  }

  @Test
  void twoValuesTellNoOutlier() {
    assertThat(Grubbs.test(new double[] {1, 9}, 0.05).isOutlier()).isFalse();
  }

  /** Iglewicz and Hoaglin's formula, worked out apart from this project. */
  @Test
  void modifiedZ() {
    assertThat(ModifiedZ.of(GRUBBS)[7]).isCloseTo(29.962714, within(1e-6));
    double[] scores = ModifiedZ.of(ROSNER);
    assertThat(Arrays.stream(scores).filter(z -> Math.abs(z) > ModifiedZ.LIMIT).count())
        .isEqualTo(3);
    assertThat(scores[ROSNER.length - 1]).isCloseTo(4.845261, within(1e-6));
  }

  @Test
  void halfOfThemEqualScoreNothing() {
    assertThat(ModifiedZ.of(5, 5, 5, 7)).containsExactly(0, 0, 0, Double.POSITIVE_INFINITY);
  }

  /** Rorabacher, Anal. Chem. 63 (1991) 139, two-sided. */
  @ParameterizedTest
  @CsvSource({"3,90,.941", "3,95,.970", "5,95,.710", "7,99,.680", "10,90,.412", "10,99,.568"})
  void dixonsTable(int n, int confidence, double critical) {
    assertThat(DixonQ.critical(n, confidence)).isEqualTo(critical);
  }

  /** The gap over the range, by hand: (245.57 - 202.18) / (245.57 - 199.31). */
  @Test
  void dixonsRatio() {
    DixonQ test = DixonQ.test(GRUBBS, 99);

    assertThat(test.q()).isCloseTo(43.39 / 46.26, within(1e-12));
    assertThat(test.isOutlier()).isTrue();
  }
}
