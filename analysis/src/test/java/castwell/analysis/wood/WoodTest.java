package castwell.analysis.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Wood Handbook (Forest Products Laboratory, FPL-GTR-190). */
class WoodTest {
  /** Table 4-2 at 70 degrees Fahrenheit, humidity 5 to 85 % in fives; it is rounded to 0.1. */
  private static final double[] AT_SEVENTY = {
    1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9
  };

  @Test
  void equilibriumMoistureAsInTheTable() {
    for (int i = 0; i < AT_SEVENTY.length; i++) {
      assertThat(EquilibriumMoisture.percent((70 - 32) / 1.8, 0.05 * (i + 1)))
          .isCloseTo(AT_SEVENTY[i], within(0.1));
    }
  }

  /** Worked out from the formula apart from this project. */
  @Test
  void equilibriumMoistureToTheLastDigit() {
    assertThat(EquilibriumMoisture.percent(20, 0.5)).isCloseTo(9.27114071, within(5e-9));
  }

  @Test
  void dryAirDriesWood() {
    assertThat(EquilibriumMoisture.percent(20, 0)).isZero();
  }

  /**
   * The handbook's example, from memory: white ash, modulus of rupture at 8 %, 103 000 kPa at 12 %,
   * 66 000 green: 119 500, that is 119 472.6.
   */
  @Test
  void whiteAshAtEightPercent() {
    assertThat(Stiffness.atMoisture(103_000, 66_000, 8, 24)).isCloseTo(119_472.6, within(0.05));
  }

  /** White ash's modulus of elasticity, 1.74 and green 1.44 Mpsi: worked out from the formula. */
  @Test
  void whiteAshsStiffness() {
    assertThat(Stiffness.atMoisture(1.74, 1.44, 8, 24)).isCloseTo(1.85330, within(5e-6));
    assertThat(Stiffness.atMoisture(1.74, 1.44, 15, 24)).isCloseTo(1.65960, within(5e-6));
  }

  /** Table 5-16 between 32 and 90 degrees Fahrenheit: from +4.31 to -2.12 %. */
  @Test
  void warmWoodIsSofter() {
    assertThat(Stiffness.relativeChange((90 - 32) / 1.8)).isCloseTo(-0.0643, within(1e-4));
  }
}
