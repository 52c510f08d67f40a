package castwell.analysis.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class FrontOverTailTest {
  private static final double SPACING_M = 0.6096;
  private static final double[] LATE_TAILS_MM = {
    -6.1, -4.2, -8.3, -5.5, -7.7, -6.9, -3.1, -9.4, -6.3, -5.0, -21.0
  };

  private static FrontOverTail of(double... residualsMm) {
    double[] metres = Arrays.stream(residualsMm).map(mm -> mm / 1000).toArray();
    return FrontOverTail.ofResiduals(metres, 0.001).orElseThrow();
  }

  // Reckoned by an independent program in Python.
  @Test
  void oneSpoiltShotAmongElevenIsLeftOut() {
    FrontOverTail told = of(LATE_TAILS_MM);
    assertThat(told.n()).isEqualTo(10);
    assertThat(told.meanM()).isCloseTo(-0.00625, within(1e-12));
    assertThat(told.uM()).isCloseTo(0.0006179901008154438, within(1e-12));
    assertThat(told.triggerM().orElseThrow()).isCloseTo(0.0009771281450069412, within(1e-12));
    assertThat(told.named(SPACING_M)).isTrue();
  }

  // By hand: 6.096 mm of 609.6 mm are 1 %, of which the mean of front and tail has half; what is as
  // likely anywhere between 0 and that, or beyond on the other side, has half that over root 3.
  @Test
  void halfOfWhatTheTailsLoseReachesTheSpeed() {
    FrontOverTail told = new FrontOverTail(20, -0.006096, 0.0005, 0.002);
    assertThat(told.relativeEffect(SPACING_M)).isCloseTo(-0.005, within(1e-12));
    assertThat(told.relativeU(SPACING_M)).isCloseTo(0.005 / Math.sqrt(3), within(1e-12));
  }

  // By hand: s2 = (8 x 4 + 0) / (8 + 10 - 1) mm2 where ten residuals are alike.
  @Test
  void whatWasBelievedOfTheTriggersWeighsEightShots() {
    double[] alike = new double[10];
    assertThat(of(alike).scatterM()).isCloseTo(0.001 * Math.sqrt(32.0 / 17), within(1e-12));
  }

  @Test
  void nineShotsTellNeitherATriggerNorALateTail() {
    FrontOverTail told = of(Arrays.copyOf(LATE_TAILS_MM, 9));
    assertThat(told.triggerM()).isEmpty();
    assertThat(told.named(SPACING_M)).isFalse();
  }

  @Test
  void whatIsSureAndTooLittleToMatterIsNotNamed() {
    assertThat(new FrontOverTail(100, 0.0006, 0.0001, 0.001).named(SPACING_M)).isFalse();
    assertThat(new FrontOverTail(100, 0.0007, 0.0001, 0.001).named(SPACING_M)).isTrue();
    assertThat(new FrontOverTail(100, 0.0007, 0.0003, 0.003).named(SPACING_M)).isFalse();
  }

  @Test
  void noShotsTellNothing() {
    assertThat(FrontOverTail.ofResiduals(new double[0], 0.001)).isEmpty();
  }
}
