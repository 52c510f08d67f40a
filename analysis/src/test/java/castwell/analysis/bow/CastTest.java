package castwell.analysis.bow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.statistic.StandardDeviation;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import castwell.analysis.unit.Units;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CastTest {
  private static final double ENERGY_J = 30 * Units.JOULES_PER_FOOT_POUND;
  private static final double VIRTUAL_KG = 150 * Units.KILOGRAMS_PER_GRAIN;

  /** v = sqrt(2 E / (m + K)) at 500 gr, worked out apart from this project. */
  @Test
  void tenGrainsPerPoundOfFiftyPounds() {
    VirtualMass bow = new VirtualMass(Quantity.exact(ENERGY_J), Quantity.exact(VIRTUAL_KG));

    Cast cast = Cast.at(bow, 10, 50 * Units.NEWTONS_PER_POUND, 0, "bench");

    assertThat(cast.massKg() / Units.KILOGRAMS_PER_GRAIN).isCloseTo(500, within(1e-9));
    assertThat(cast.speedMps().value() / Units.METRES_PER_FOOT)
        .isCloseTo(144.185246198, within(1e-8));
    assertThat(cast.speedMps().standardUncertainty()).isZero();
  }

  /** JCGM 101:2008: propagation of distributions by a Monte Carlo method. */
  @Test
  void theScalesErrorAsInAMonteCarlo() {
    long seed = Seed.of(CastTest.class);
    Random random = new Random(seed);
    double energyU = 0.2 * Units.JOULES_PER_FOOT_POUND;
    double weightN = 50 * Units.NEWTONS_PER_POUND;
    double scaleU = 0.7 * Units.NEWTONS_PER_POUND;
    VirtualMass bow =
        new VirtualMass(
            Quantity.of(ENERGY_J, energyU, Source.own("fit")), Quantity.exact(VIRTUAL_KG));
    Cast cast = Cast.at(bow, 10, weightN, scaleU, "bench");

    double[] drawn = new double[20_000];
    for (int i = 0; i < drawn.length; i++) {
      double e = ENERGY_J + energyU * random.nextGaussian();
      double w = weightN + scaleU * random.nextGaussian();
      double m = 10 * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP * w;
      drawn[i] = Math.sqrt(2 * e / (m + VIRTUAL_KG));
    }
    assertThat(cast.withScaleMps().standardUncertainty())
        .as("seed %d", seed)
        .isCloseTo(StandardDeviation.of(drawn), within(0.05 * StandardDeviation.of(drawn)));
    assertThat(cast.withScaleMps().only(Kind.OWN).standardUncertainty())
        .isCloseTo(cast.speedMps().standardUncertainty(), within(1e-12));
  }

  /** An exact synthetic set: v = sqrt(2 E / (m + K)) at 300 to 700 gr. */
  @Test
  void ofExactSpeedsTheIntervalCollapses() {
    double[] masses =
        IntStream.rangeClosed(3, 7).mapToDouble(i -> 100 * i * Units.KILOGRAMS_PER_GRAIN).toArray();
    double[] speeds =
        Arrays.stream(masses).map(m -> Math.sqrt(2 * ENERGY_J / (m + VIRTUAL_KG))).toArray();
    VirtualMass bow = VirtualMassFit.of(masses, speeds).orElseThrow().quantities("bow");

    Cast cast = Cast.at(bow, 9, 50 * Units.NEWTONS_PER_POUND, 0, "bench");

    double expected = Math.sqrt(2 * ENERGY_J / (450 * Units.KILOGRAMS_PER_GRAIN + VIRTUAL_KG));
    assertThat(cast.speedMps().value()).isCloseTo(expected, within(1e-9));
    assertThat(cast.speedMps().interval(0.95).halfWidth()).isLessThan(1e-9);
    assertThat(cast.withScaleMps().interval(0.95).halfWidth()).isLessThan(1e-9);
  }

  /** JCGM 100:2008, 5.2: what both share leaves their difference. */
  @Test
  void twoBowsWeighedByOneScaleDifferWithoutItsError() {
    VirtualMass bow = new VirtualMass(Quantity.exact(ENERGY_J), Quantity.exact(VIRTUAL_KG));
    double weightN = 50 * Units.NEWTONS_PER_POUND;
    Quantity one = Cast.at(bow, 10, weightN, 3, "bench").withScaleMps();

    assertThat(one.minus(Cast.at(bow, 10, weightN, 3, "bench").withScaleMps()))
        .satisfies(difference -> assertThat(difference.standardUncertainty()).isZero());
    assertThat(one.minus(Cast.at(bow, 10, weightN, 3, "hand").withScaleMps()).standardUncertainty())
        .isCloseTo(Math.sqrt(2) * one.standardUncertainty(), within(1e-12));
  }
}
