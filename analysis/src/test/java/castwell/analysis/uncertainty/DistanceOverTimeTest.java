package castwell.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.unit.Units;
import org.junit.jupiter.api.Test;

/**
 * v = d / t with u(d) common and u(t) from ten readings. Expected values: JCGM 100:2008, 5.1.2,
 * G.4.1 and 6.2, worked out apart from this project.
 */
class DistanceOverTimeTest {
  private final Quantity distanceM = Quantity.of(0.6096, 0.0005, Source.common("spacing"));
  private final Quantity seconds =
      Quantity.of(13.3333e-3, 8e-6, new Source("interval", Kind.OWN, 9));
  private final Quantity speedMps = distanceM.dividedBy(seconds);

  @Test
  void valueAndStandardUncertainty() {
    assertThat(speedMps.value() / Units.METRES_PER_FOOT).isCloseTo(150.000375001, within(5e-10));
    assertThat(speedMps.standardUncertainty() / Units.METRES_PER_FOOT)
        .isCloseTo(0.152436563, within(5e-10));
    assertThat(speedMps.standardUncertainty() / speedMps.value())
        .isCloseTo(1.016241212e-3, within(5e-13));
  }

  @Test
  void effectiveDegreesOfFreedomAndExpandedUncertainty() {
    assertThat(speedMps.effectiveDegreesOfFreedom()).isCloseTo(74.0663, within(5e-5));
    double expandedMps = speedMps.expandedUncertainty(0.95);
    assertThat(expandedMps / speedMps.standardUncertainty()).isCloseTo(1.992543, within(5e-7));
    assertThat(expandedMps / Units.METRES_PER_FOOT).isCloseTo(0.303736, within(5e-7));
  }

  @Test
  void ownAndCommonPartsStayApart() {
    double own = speedMps.standardUncertainty(Kind.OWN);
    double common = speedMps.standardUncertainty(Kind.COMMON);

    assertThat(own / speedMps.value()).isCloseTo(8e-6 / 13.3333e-3, within(1e-15));
    assertThat(common / speedMps.value()).isCloseTo(0.0005 / 0.6096, within(1e-15));
    assertThat(Math.hypot(own, common)).isCloseTo(speedMps.standardUncertainty(), within(1e-15));
  }
}
