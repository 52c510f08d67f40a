package castwell.analysis.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.gates.DropCheck.Outcome;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import org.junit.jupiter.api.Test;

class DropCheckTest {
  private static final Quantity GRAVITY = Quantity.exact(9.80665);

  private static Quantity known(double value, double u, String name) {
    return Quantity.of(value, u, Source.common(name));
  }

  // By hand: with g = 9.80665, h = g/2 and d = 3 g/2, the falls last 1 s and 2 s exactly.
  @Test
  void theTimeBetweenTwoFallsOfKnownLength() {
    Quantity drop = Quantity.exact(9.80665 / 2);
    Quantity spacing = Quantity.exact(3 * 9.80665 / 2);
    assertThat(DropCheck.expectedS(drop, spacing, GRAVITY, 0).value()).isCloseTo(1, within(1e-12));
  }

  // dt/dd = 1 / sqrt(2 g (h + d)), by hand: the front's speed at gate B.
  @Test
  void theSpacingsUncertaintyIsCarriedByTheSpeedThere() {
    Quantity expected =
        DropCheck.expectedS(Quantity.exact(0.3), known(0.6, 0.0005, "spacing"), GRAVITY, 0);
    assertThat(expected.standardUncertainty())
        .isCloseTo(0.0005 / Math.sqrt(2 * 9.80665 * 0.9), within(1e-12));
  }

  // dt = ds / v at each gate, v = sqrt(2 g h) there; independent, so their squares add up. By hand.
  @Test
  void whereEachGateTriggersCountsMoreWhereTheRodIsSlower() {
    Quantity expected =
        DropCheck.expectedS(Quantity.exact(0.3), Quantity.exact(0.6), GRAVITY, 0.001);
    double atA = 0.001 / Math.sqrt(2 * 9.80665 * 0.3);
    double atB = 0.001 / Math.sqrt(2 * 9.80665 * 0.9);
    assertThat(expected.standardUncertainty()).isCloseTo(Math.hypot(atA, atB), within(1e-9));
  }

  @Test
  void aSpacingThatIsWrongByOnePercentDiffers() {
    Quantity expected =
        DropCheck.expectedS(known(0.3, 0.001, "drop"), known(0.6, 0.0005, "spacing"), GRAVITY, 0);
    Quantity right = known(expected.value(), 2e-5, "ticks");
    Quantity wrong = known(expected.value() * 1.01, 2e-5, "ticks");
    assertThat(new DropCheck(expected, right).outcome()).isEqualTo(Outcome.AGREES);
    assertThat(new DropCheck(expected, wrong).outcome()).isEqualTo(Outcome.DIFFERS);
  }

  @Test
  void aDropThatIsHardlyKnownCantTell() {
    Quantity expected =
        DropCheck.expectedS(known(0.3, 0.05, "drop"), known(0.6, 0.0005, "spacing"), GRAVITY, 0);
    Quantity measured = known(expected.value() * 1.01, 2e-5, "ticks");
    assertThat(new DropCheck(expected, measured).outcome()).isEqualTo(Outcome.CANT_TELL);
  }

  @Test
  void aDropFromTheGateItselfIsRefused() {
    assertThatThrownBy(
            () -> DropCheck.expectedS(Quantity.exact(0), Quantity.exact(0.6), GRAVITY, 0))
        .hasMessageContaining("above 0");
  }
}
