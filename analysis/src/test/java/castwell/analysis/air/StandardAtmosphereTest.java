package castwell.analysis.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StandardAtmosphereTest {

  // ISO 2533:1975, worked out apart from this project from its constants.
  @ParameterizedTest
  @CsvSource({
    "0, 288.150, 101325.000, 1.225000",
    "1000, 281.650, 89874.563, 1.111643",
    "2000, 275.150, 79495.202, 1.006490"
  })
  void atThatHeight(double heightM, double kelvin, double pascal, double density) {
    assertThat(StandardAtmosphere.temperatureK(heightM)).isCloseTo(kelvin, within(1e-9));
    assertThat(StandardAtmosphere.pressurePa(heightM)).isCloseTo(pascal, within(5.1e-4));
    assertThat(StandardAtmosphere.density(heightM)).isCloseTo(density, within(5.1e-7));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-2001, 11001, Double.NaN})
  void refusesWhereItDoesNotHold(double heightM) {
    assertThatThrownBy(() -> StandardAtmosphere.density(heightM))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageEndingWith("not at " + heightM);
  }
}
