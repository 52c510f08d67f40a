package castwell.analysis.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** NIST SP 811 (2008), appendix B; grain and slug agree with Debian's units 2.22. */
class UnitsTest {

  @Test
  void derivedUnits() {
    assertThat(Units.NEWTONS_PER_POUND).isCloseTo(4.4482216152605, within(1e-13));
    assertThat(Units.JOULES_PER_FOOT_POUND).isCloseTo(1.3558179483314004, within(1e-15));
    assertThat(Units.KILOGRAMS_PER_SLUG).isCloseTo(14.5939029372064, within(1e-13));
    assertThat(Units.KILOGRAMS_PER_POUND / Units.KILOGRAMS_PER_GRAIN).isCloseTo(7000, within(1e-9));
  }

  @Test
  void grainsPerPound() {
    double massKg = 500 * Units.KILOGRAMS_PER_GRAIN;

    assertThat(Units.grainsPerPound(massKg, 50 * Units.NEWTONS_PER_POUND))
        .isCloseTo(10, within(1e-13));
  }

  @Test
  void tenGrainsPerPoundInGramsPerNewton() {
    // Worked out apart from this project from the exact definitions.
    double gramsPerNewton = 0.145673744711;

    assertThat(Units.grainsPerPound(gramsPerNewton / 1000, 1)).isCloseTo(10, within(1e-10));
  }
}
