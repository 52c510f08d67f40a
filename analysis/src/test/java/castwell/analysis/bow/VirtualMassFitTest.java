package castwell.analysis.bow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.unit.Units;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Exact values of v = sqrt(2 E / (m + K)) with E = 30 ft lbf and K = 150 gr, worked out from the
 * formula apart from this project.
 */
class VirtualMassFitTest {
  private static final double[] MASSES_GR = {300, 400, 500, 600, 700};
  private static final double[] SPEEDS_FPS = {
    173.289099444, 156.745888122, 144.185246198, 134.229159245, 126.086340137
  };

  private static double[] scaled(double[] values, double factor) {
    return Arrays.stream(values).map(value -> value * factor).toArray();
  }

  private static final double[] MASSES_KG = scaled(MASSES_GR, Units.KILOGRAMS_PER_GRAIN);
  private static final double[] SPEEDS_MPS = scaled(SPEEDS_FPS, Units.METRES_PER_FOOT);

  @Test
  void exactSpeedsGiveBackEnergyAndVirtualMass() {
    VirtualMassFit fit = VirtualMassFit.of(MASSES_KG, SPEEDS_MPS).orElseThrow();

    assertThat(fit.energyJ() / Units.JOULES_PER_FOOT_POUND / 30).isCloseTo(1, within(1e-9));
    assertThat(fit.virtualMassKg() / Units.KILOGRAMS_PER_GRAIN / 150).isCloseTo(1, within(1e-9));
  }

  @Test
  void theShareOfTheEnergyIsAsTheFormulaSays() {
    VirtualMass bow = VirtualMassFit.of(MASSES_KG, SPEEDS_MPS).orElseThrow().quantities("this bow");

    double[] shares =
        Arrays.stream(MASSES_KG).map(m -> bow.share(Quantity.exact(m)).value()).toArray();
    assertThat(shares)
        .containsExactly(new double[] {.666667, .727273, .769231, .8, .823529}, within(1e-6));
  }

  /**
   * R 4.2.2, m and v in kg and m/s: nls(v ~ sqrt(2 * E / (m + K)), start = list(E = 40, K = .01),
   * with the gradient by deriv): summary(fit)$coefficients, vcov.
   */
  @Test
  void scatteredShotsAsInR() {
    double[] m = {.02, .02, .02, .03, .03, .03, .045, .045, .045};
    double[] v = {52.1, 51.6, 52.4, 45.2, 44.7, 45.0, 38.1, 38.3, 37.8};

    VirtualMassFit fit = VirtualMassFit.of(m, v).orElseThrow();

    assertThat(fit.energyJ()).isCloseTo(39.1682511465793, within(1e-8));
    assertThat(fit.virtualMassKg()).isCloseTo(0.0088955794851597, within(1e-10));
    assertThat(fit.energySe()).isCloseTo(0.75721807863998, within(1e-8));
    assertThat(fit.virtualMassSe()).isCloseTo(0.00067430939232732, within(1e-10));
    assertThat(fit.correlation()).isCloseTo(0.97421056804929, within(1e-8));
    assertThat(fit.residualSdMps()).isCloseTo(0.29694604443646, within(1e-10));
  }

  @Test
  void heavierArrowsThatArentSlowerHaveNoFit() {
    assertThat(VirtualMassFit.of(new double[] {.02, .02, .03}, new double[] {50, 51, 52}))
        .isEmpty();
  }

  @Test
  void oneMassHasNoFit() {
    assertThat(VirtualMassFit.of(new double[] {.02, .02, .02}, new double[] {50, 51, 52}))
        .isEmpty();
  }
}
