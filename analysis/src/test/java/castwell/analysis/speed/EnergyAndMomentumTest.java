package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import castwell.analysis.unit.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EnergyAndMomentumTest {

  /** The twelve digits given, to ten. */
  private static final double TEN_DIGITS_PERCENT = 1e-8;

  // Worked out apart from this project from the exact units of NIST SP 811 (2008).
  @ParameterizedTest
  @CsvSource({
    "500, 150, 24.9757635307, 33.8625884682, 0.333010180410, 1.48130308260",
    "500, 170, 32.0799807128, 43.4946136325, 0.377411537798, 1.67881016028",
    "350, 300, 69.9321378860, 94.8152477111, 0.466214252574, 2.07382431564",
    "450, 172.5, 29.7274025424, 40.3049459243, 0.344665536724, 1.53314869049"
  })
  void inBothSystemsOfUnits(
      double grains, double fps, double footPounds, double joules, double slugFps, double kgMps) {
    Quantity massKg = Quantity.exact(grains * Units.KILOGRAMS_PER_GRAIN);
    Quantity speedMps = Quantity.exact(fps * Units.METRES_PER_FOOT);
    double energyJ = KineticEnergy.of(massKg, speedMps).value();
    double momentum = Momentum.of(massKg, speedMps).value();

    assertThat(energyJ).isCloseTo(joules, withinPercentage(TEN_DIGITS_PERCENT));
    assertThat(energyJ / Units.JOULES_PER_FOOT_POUND)
        .isCloseTo(footPounds, withinPercentage(TEN_DIGITS_PERCENT));
    assertThat(momentum).isCloseTo(kgMps, withinPercentage(TEN_DIGITS_PERCENT));
    assertThat(momentum / Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND)
        .isCloseTo(slugFps, withinPercentage(TEN_DIGITS_PERCENT));
  }

  @Test
  void speedsRelativeUncertaintyCountsTwiceInTheEnergy() {
    // JCGM 100:2008, 5.1.6: relative uncertainties times the exponents.
    Quantity massKg = Quantity.of(0.03, 0.03 * 1e-3, Source.common("scale"));
    Quantity speedMps = Quantity.of(50, 50 * 2e-3, Source.own("speed"));
    Quantity energyJ = KineticEnergy.of(massKg, speedMps);

    assertThat(energyJ.standardUncertainty() / energyJ.value())
        .isCloseTo(Math.hypot(1e-3, 4e-3), withinPercentage(1e-9));
  }
}
