package castwell.analysis.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NormalGravityTest {

  // Moritz, Geodetic Reference System 1980: normal gravity at equator and pole, and at 45 degrees.
  @ParameterizedTest
  @CsvSource({"0, 9.7803267715", "90, 9.8321863685", "-90, 9.8321863685", "45, 9.806199203"})
  void isThePublishedValueAtSeaLevel(double latitude, double published) {
    assertThat(NormalGravity.of(latitude, 0)).isCloseTo(published, within(1e-9));
  }

  // Common practice: gravity falls by about 0.3086 mGal a metre.
  @Test
  void fallsWithHeight() {
    double perMetre = (NormalGravity.of(45, 0) - NormalGravity.of(45, 100)) / 100;
    assertThat(perMetre).isCloseTo(0.3086e-5, within(0.001e-5));
  }

  @Test
  void aLatitudeBeyondThePoleIsRefused() {
    assertThatThrownBy(() -> NormalGravity.of(90.1, 0)).hasMessageContaining("-90 and 90");
  }
}
