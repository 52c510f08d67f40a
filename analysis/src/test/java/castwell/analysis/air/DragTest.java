package castwell.analysis.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import castwell.analysis.unit.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DragTest {
  private static final double DIAMETER_M = 11.0 / 32 * Units.METRES_PER_INCH;
  private static final double MASS_KG = 500 * Units.KILOGRAMS_PER_GRAIN;
  private static final double DENSITY = 1.225;

  // Worked out apart from this project: 500 gr, 11/32 in; coefficients from Proceedings (MDPI) 49
  // (2020) 56 and KAKENHI 18K03943; in percent, to the digits given.
  @ParameterizedTest
  @CsvSource({
    Drag.LAMINAR + ", 0.147, 0.44",
    Drag.SHORT_VANES + ", 0.176, 0.53",
    Drag.LARGE_VANES + ", 0.232, 0.69",
    Drag.TURBULENT + ", 0.294, 0.88"
  })
  void lossOverOneAndThreeMetres(double coefficient, double perMetre, double overThree) {
    Quantity k = Quantity.exact(Drag.lossPerMetre(coefficient, DIAMETER_M, MASS_KG, DENSITY));

    assertThat(percentLost(k, 1)).isCloseTo(perMetre, within(5.1e-4));
    assertThat(percentLost(k, 3)).isCloseTo(overThree, within(5.1e-3));
  }

  private static double percentLost(Quantity k, double metres) {
    return 100 * (1 - 50 / Drag.speedAtBow(Quantity.exact(50), metres, k).value());
  }

  @Test
  void anUnmeasuredCoefficientIsAnywhereFromLaminarToTurbulent() {
    // JCGM 100:2008, 4.3.8: u = (2.6 - 1.3) / sqrt 12
    assertThat(Drag.unmeasuredCoefficient().value()).isEqualTo(2.05);
    assertThat(Drag.unmeasuredCoefficient().standardUncertainty())
        .isCloseTo(0.375277675, within(1e-9));
  }

  @Test
  void speedAtTheBowCarriesBothUncertainties() {
    Quantity k = Drag.lossPerMetre(Drag.unmeasuredCoefficient(), DIAMETER_M, MASS_KG, DENSITY);
    Quantity speed = Quantity.of(50, 0.1, Source.own("speed"));
    Quantity atBow = Drag.speedAtBow(speed, 2.3, k);
    double growth = Math.exp(2.3 * k.value());

    // JCGM 100:2008, 5.1.2: dv0/dv = exp(k x), dv0/dk = x v0
    assertThat(atBow.standardUncertainty(Kind.OWN)).isCloseTo(0.1 * growth, within(1e-12));
    assertThat(atBow.standardUncertainty(Kind.COMMON))
        .isCloseTo(2.3 * 50 * growth * k.standardUncertainty(), within(1e-12));
  }

  @Test
  void atTheBowItselfNothingIsLost() {
    Quantity k = Drag.lossPerMetre(Drag.unmeasuredCoefficient(), DIAMETER_M, MASS_KG, DENSITY);

    assertThat(Drag.speedAtBow(Quantity.exact(50), 0, k).value()).isEqualTo(50);
    assertThat(Drag.speedAtBow(Quantity.exact(50), 0, k).standardUncertainty()).isZero();
  }
}
