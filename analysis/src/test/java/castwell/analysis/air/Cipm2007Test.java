package castwell.analysis.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class Cipm2007Test {

  // Worked out apart from this project from Metrologia 45 (2008) 149, to the digits given.
  @ParameterizedTest
  @CsvSource({
    "20, 101325, 0.5, 2339.1632, 1.0040256, 0.99961477, 1.1993139",
    "15, 101325, 0.0, 1705.6691, 1.0039276, 0.99959221, 1.2255213",
    "30, 101325, 0.8, 4246.7990, 1.0043056, 0.99962774, 1.1500117",
    "10,  95000, 0.6, 1228.1149, 1.0036590, 0.99954826, 1.1659207"
  })
  void densityAndItsParts(
      double celsius, double pascal, double humidity, double psv, double f, double z, double rho) {
    double vapour = Cipm2007.vapourMoleFraction(celsius, pascal, humidity);

    assertThat(Cipm2007.saturationVapourPressure(celsius)).isCloseTo(psv, within(5.1e-5));
    assertThat(Cipm2007.enhancementFactor(celsius, pascal)).isCloseTo(f, within(5.1e-8));
    assertThat(Cipm2007.compressibility(celsius, pascal, vapour)).isCloseTo(z, within(5.1e-9));
    assertThat(Cipm2007.density(celsius, pascal, humidity, Cipm2007.ORDINARY_CO2))
        .isCloseTo(rho, within(5.1e-8));
  }

  @Test
  void vapourPressureOfSaturatedAir() {
    // Orekit 13.0.2: CIPM2007.waterVaporPressure(101325, 293.15, 1.0)
    double pascal = Cipm2007.vapourMoleFraction(20, 101325, 1) * 101325;

    assertThat(pascal).isCloseTo(2348.579777, within(5e-7));
  }
}
