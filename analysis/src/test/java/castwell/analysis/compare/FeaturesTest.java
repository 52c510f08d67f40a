package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.compare.Features.Bow;
import castwell.analysis.compare.Features.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** R 4.2.2, with the same figures typed in. */
class FeaturesTest {
  private static final double[] CAST = {
    45.2, 47.1, 44.0, 46.3, 48.0, 43.1, 45.9, 44.4, 46.8, 47.5, 43.7, 45.0
  };
  private static final double[] LENGTH = {1.60, 1.55, 1.72, 1.58, 1.50, 1.70, 1.65};
  private static final double[] FOLLOW = {.02, .03, .05, .025, .01, .06};
  private static final String[] WOOD = {
    "yew", "yew", "ash", "yew", "osage", "ash", "osage", "ash", "osage", "yew", "ash", "osage"
  };

  private static List<Bow> bows(int n) {
    List<Bow> bows = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      bows.add(
          new Bow(
              CAST[i],
              at(LENGTH, i),
              at(FOLLOW, i),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              Optional.of(WOOD[i])));
    }
    return bows;
  }

  private static OptionalDouble at(double[] values, int i) {
    return i < values.length ? OptionalDouble.of(values[i]) : OptionalDouble.empty();
  }

  private static Finding of(String feature) {
    return Features.of(bows(CAST.length)).stream()
        .filter(finding -> finding.feature().equals(feature))
        .findFirst()
        .orElseThrow();
  }

  /**
   * cor.test(length, cast[1:7], method = "spearman", exact = TRUE), then with follow, cast[1:6].
   */
  @Test
  void measuresGoWithCastAsInR() {
    Finding length = of("length");
    assertThat(length.n()).isEqualTo(7);
    assertThat(length.rho()).isCloseTo(-0.928571428571428, within(1e-12));
    assertThat(length.pValue()).isCloseTo(0.00674603174603, within(1e-12));
    assertThat(length.exact()).isTrue();

    Finding follow = of("string follow");
    assertThat(follow.n()).isEqualTo(6);
    assertThat(follow.rho()).isCloseTo(-0.771428571428571, within(1e-12));
    assertThat(follow.pValue()).isCloseTo(0.102777777777778, within(1e-12));
  }

  /** kruskal.test(cast, factor(wood)): by chi-squared, which is said. */
  @Test
  void woodsDifferAsInR() {
    Finding wood = of("wood");

    assertThat(wood.n()).isEqualTo(12);
    assertThat(wood.pValue()).isCloseTo(0.0244398944961762, within(1e-12));
    assertThat(wood.exact()).isFalse();
    assertThat(wood.rho()).isNaN();
  }

  @Test
  void whatNoFourBowsHaveIsntTested() {
    assertThat(Features.of(bows(CAST.length)))
        .extracting(Finding::feature)
        .containsExactly("length", "string follow", "wood");
    assertThat(Features.of(bows(3))).isEmpty();
    assertThat(Features.of(List.of())).isEmpty();
  }
}
