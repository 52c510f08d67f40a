package castwell.analysis.bow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.unit.Units;
import org.junit.jupiter.api.Test;

/**
 * Hickman's shooting machine with a 400 gr arrow and strings of 108 and 254 gr ("Effect of String
 * Weight on Arrow Velocity and Efficiency of Bows", in Hickman, Nagler and Klopsteg, Archery: the
 * Technical Side (1947)).
 */
class HickmanTest {
  private static final double ARROW_GR = 400;

  private static double withTheHeavyString(double speedFps, double efficiency) {
    double massKg = ARROW_GR * Units.KILOGRAMS_PER_GRAIN;
    double virtualKg = massKg * (1 / efficiency - 1);
    double speedMps = speedFps * Units.METRES_PER_FOOT;
    Quantity energy = Quantity.exact((massKg + virtualKg) * speedMps * speedMps / 2);
    double heavier = StringMass.virtualMassKg(virtualKg, (254 - 108) * Units.KILOGRAMS_PER_GRAIN);
    return new VirtualMass(energy, Quantity.exact(heavier)).speedMps(Quantity.exact(massKg)).value()
        / Units.METRES_PER_FOOT;
  }

  @Test
  void theYewBowAgreesWithinOneFootPerSecond() {
    assertThat(withTheHeavyString(155, 0.68)).isCloseTo(148, within(1.0));
  }

  /** Worked out from his figures apart from this project. */
  @Test
  void predictionsFromTheLightString() {
    assertThat(withTheHeavyString(155, 0.68)).isCloseTo(148.96, within(5e-3));
    assertThat(withTheHeavyString(142, 0.62)).isCloseTo(136.93, within(5e-3));
    assertThat(withTheHeavyString(139, 0.67)).isCloseTo(133.66, within(5e-3));
  }
}
