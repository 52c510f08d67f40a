package castwell.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** JCGM 100:2008, 5.2: correlated inputs add before they are squared. */
class SharedSourceTest {
  private final Source shared = Source.common("shared");
  private final Quantity five = Quantity.of(5, 0.3, shared);
  private final Quantity two = Quantity.of(2, 0.3, shared);

  @Test
  void cancelsInADifference() {
    assertThat(five.minus(two).standardUncertainty()).isZero();
  }

  @Test
  void addsUpInASum() {
    assertThat(five.plus(two).standardUncertainty()).isCloseTo(0.6, within(1e-15));
  }

  @Test
  void countsTwiceInASquare() {
    assertThat(five.times(five).standardUncertainty()).isCloseTo(2 * 5 * 0.3, within(1e-14));
  }

  @Test
  void cancelsInARatioToItself() {
    assertThat(five.dividedBy(five).standardUncertainty()).isCloseTo(0, within(1e-16));
  }

  @Test
  void independentSourcesAddInSquares() {
    Quantity other = Quantity.of(2, 0.4, Source.own("other"));

    assertThat(five.minus(other).standardUncertainty()).isCloseTo(0.5, within(1e-15));
  }

  @Test
  void anExactValueHasNone() {
    assertThat(Quantity.exact(5).standardUncertainty()).isZero();
    assertThat(Quantity.exact(5).effectiveDegreesOfFreedom()).isInfinite();
    assertThat(Quantity.exact(5).expandedUncertainty(0.95)).isZero();
  }

  @Test
  void refusesWhatIsNoUncertaintyAndNoCoverage() {
    assertThatThrownBy(() -> Quantity.of(1, -0.1, shared))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Quantity.of(1, Double.NaN, shared))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> five.expandedUncertainty(1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
