package castwell.analysis.bow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against the model's own formulas, over random bows. */
class ReachTest {
  private final long seed = Long.getLong("castwell.seed", System.nanoTime());
  private final Random random = new Random(seed);

  private static VirtualMass exact(double energyJ, double virtualMassKg) {
    return new VirtualMass(Quantity.exact(energyJ), Quantity.exact(virtualMassKg));
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  @Test
  void theArrowFoundCarriesWhatWasAskedFor() {
    for (int i = 0; i < 500; i++) {
      VirtualMass bow = exact(between(20, 70), between(0.003, 0.02));
      double massKg = between(0.02, 0.06);
      Target energy = new Target.KineticEnergy(bow.kineticEnergyJ(Quantity.exact(massKg)));
      Target momentum = new Target.Momentum(bow.momentumNs(Quantity.exact(massKg)));

      for (Target target : new Target[] {energy, momentum}) {
        Reach reach = Reach.of(bow, target, 0.95);
        assertThat(reach.massKg().orElseThrow())
            .as("seed %d", seed)
            .isCloseTo(massKg, within(1e-9));
        assertThat(reach.intervalKg().low()).isCloseTo(massKg, within(1e-6));
        assertThat(reach.intervalKg().high()).isCloseTo(massKg, within(1e-6));
      }
    }
  }

  /**
   * What a strong bow gave an arrow, a weaker one gives a heavier arrow: by momentum heavier yet.
   */
  @Test
  void momentumAsksAWeakerBowForMoreArrowThanEnergyDoes() {
    for (int i = 0; i < 500; i++) {
      VirtualMass strong = exact(between(40, 70), between(0.003, 0.02));
      Quantity arrow = Quantity.exact(between(0.02, 0.06));
      double weakerJ = strong.energyJ().value() * between(0.8, 0.99);
      VirtualMass weaker = exact(weakerJ, strong.virtualMassKg().value());
      // The heavier arrow has more energy at the same momentum's mass only above this reference.
      double byMomentum = new Target.Momentum(strong.momentumNs(arrow)).leastMassKg(weaker);
      double byEnergy = new Target.KineticEnergy(strong.kineticEnergyJ(arrow)).leastMassKg(weaker);

      assertThat(byMomentum).as("seed %d", seed).isGreaterThan(arrow.value());
      assertThat(Double.isNaN(byEnergy) || byEnergy > arrow.value()).isTrue();
    }
  }

  @Test
  void moreEnergyThanTheBowHandsOverIsNeverReached() {
    Reach reach = Reach.of(exact(40, 0.01), new Target.KineticEnergy(Quantity.exact(40)), 0.95);

    assertThat(reach.massKg()).isEmpty();
    assertThat(reach.intervalKg().high()).isInfinite();
  }

  @Test
  void anUncertainBowLeavesTheUpperEndOpen() {
    VirtualMass bow = new VirtualMass(Quantity.of(40, 1, Source.own("fit")), Quantity.exact(0.01));

    Reach reach = Reach.of(bow, new Target.KineticEnergy(Quantity.exact(39)), 0.95);

    assertThat(reach.massKg().orElseThrow()).isCloseTo(0.39, within(1e-12));
    assertThat(reach.intervalKg().low()).isLessThan(0.39);
    assertThat(reach.intervalKg().high()).isInfinite();
  }
}
