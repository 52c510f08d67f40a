package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.shot.Passage;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import org.junit.jupiter.api.Test;

/** The speed of an arrow whose front and tail were weighed against each other. */
class MixedSpeedTest {
  private static final Source TRUST = Source.own("which edge to trust");
  private final Passage passage = Flight.ARROW.passage();

  @Test
  void hasTheValueAndTheOwnUncertaintyOfTheMixture() {
    Measurement mixed = measure(new MixedSpeed(45.9, 0.4, 0.743, 0, 0.2, 0.5, 0.3));
    Quantity speed = mixed.speed().orElseThrow();

    assertThat(speed.value()).isEqualTo(45.9);
    assertThat(speed.standardUncertainty(Kind.OWN)).isCloseTo(0.4, within(1e-12));
    assertThat(speed.contributions().get(TRUST)).isBetween(0.3, 0.4);
    assertThat(mixed.length().orElseThrow().value()).isEqualTo(0.743);
  }

  /** By reasoning: the weights are those of the pairs, each of two triggers. */
  @Test
  void hasTheTriggersByTheWeightsOfTheirPairs() {
    Quantity speed =
        measure(new MixedSpeed(45.72, 0.4, 0.74, 0, 0, 0.75, 0.25)).speed().orElseThrow();
    double ofOneTrigger = 1e-3 / Flight.SPACING_M * 45.72;

    assertThat(part(speed, "trigger at gate A, front"))
        .isCloseTo(0.75 * ofOneTrigger, within(1e-5));
    assertThat(part(speed, "trigger at gate B, tail")).isCloseTo(0.25 * ofOneTrigger, within(1e-5));
  }

  @Test
  void hasTheCommonUncertaintyOfAnyOtherSpeed() {
    Quantity plain = Flight.ARROW.measure(passage).speed().orElseThrow();
    Quantity mixed = measure(new MixedSpeed(45.72, 0.4, 0.74, 0, 1, 0, 0)).speed().orElseThrow();

    assertThat(mixed.standardUncertainty(Kind.COMMON))
        .isCloseTo(plain.standardUncertainty(Kind.COMMON), within(1e-12));
  }

  private static double part(Quantity speed, String source) {
    return Math.abs(speed.contributions().get(Source.own(source)));
  }

  private Measurement measure(MixedSpeed mixed) {
    return SpeedMeter.measure(
        Ends.of(passage), mixed, Flight.CALIBRATION, Flight.RATE, StampLatency.NONE);
  }
}
