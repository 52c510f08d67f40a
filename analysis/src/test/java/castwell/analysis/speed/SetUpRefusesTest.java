package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SetUpRefusesTest {

  @ParameterizedTest
  @ValueSource(doubles = {0, -0.6, Double.NaN, Double.POSITIVE_INFINITY})
  void aSpacingThatIsNone(double spacingM) {
    assertThatThrownBy(() -> new Calibration(spacingM, 0, 0, 0, Oscillator.CRYSTAL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the gate spacing lies above 0 m, not at " + spacingM);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.001, Double.NaN, Double.POSITIVE_INFINITY})
  void whatCannotBeALength(double metres) {
    assertThatThrownBy(() -> new Calibration(0.6, metres, 0, 0, Oscillator.CRYSTAL))
        .hasMessageContaining("standard uncertainty is at least 0 m");
    assertThatThrownBy(() -> new Calibration(0.6, 0, metres, 0, Oscillator.CRYSTAL))
        .hasMessageContaining("trigger scatter is at least 0 m");
    assertThatThrownBy(() -> new Calibration(0.6, 0, 0, metres, Oscillator.CRYSTAL))
        .hasMessageContaining("from the bow to gate A is at least 0 m");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -2e6, Double.NaN, Double.POSITIVE_INFINITY})
  void aTickRateThatIsNone(double hz) {
    assertThatThrownBy(() -> new TickRate(hz, 0)).hasMessageContaining("above 0 Hz");
  }

  @Test
  void nominalRateIsRectangular() {
    // JCGM 100:2008, 4.3.7
    assertThat(TickRate.nominal(2e6, Oscillator.RESONATOR).relativeU())
        .isCloseTo(0.00288675134594813, within(1e-17));
    assertThat(TickRate.nominal(2e6, Oscillator.CRYSTAL).relativeU())
        .isCloseTo(0.0000288675134594813, within(1e-19));
  }
}
