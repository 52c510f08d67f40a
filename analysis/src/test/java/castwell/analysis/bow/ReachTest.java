package castwell.analysis.bow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Against the model's own formulas, over random bows. */
@Tag("slow")
class ReachTest {
  private final long seed = Seed.of(ReachTest.class);
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
   * A bow that hands over more than the one that served may take a lighter arrow, and momentum lets
   * it be less light than energy does; one that hands over less needs a heavier arrow, and there it
   * is energy that asks for more: p2 / 2 m = T at the reference's mass alone.
   */
  @Test
  void momentumAsksForMoreArrowThanEnergyDoes() {
    for (int i = 0; i < 500; i++) {
      VirtualMass served = exact(between(25, 40), between(0.005, 0.015));
      Quantity arrow = Quantity.exact(between(0.03, 0.06));
      Target momentum = new Target.Momentum(served.momentumNs(arrow));
      Target energy = new Target.KineticEnergy(served.kineticEnergyJ(arrow));
      double more = served.energyJ().value() * between(1.05, 1.6);
      double less = served.energyJ().value() * between(0.9, 0.95);
      VirtualMass stronger = exact(more, served.virtualMassKg().value());
      VirtualMass weaker = exact(less, served.virtualMassKg().value());

      assertThat(momentum.leastMassKg(stronger))
          .as("seed %d", seed)
          .isLessThan(arrow.value())
          .isGreaterThan(energy.leastMassKg(stronger));
      assertThat(momentum.leastMassKg(weaker)).isGreaterThan(arrow.value());
      assertThat(energy.leastMassKg(weaker))
          .as("seed %d", seed)
          .satisfiesAnyOf(
              m -> assertThat(m).isNaN(),
              m -> assertThat(m).isGreaterThan(momentum.leastMassKg(weaker)));
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

  /**
   * In general, whatever the two bows' E and K: at the arrow that momentum asks for the energy is
   * p2 / (2 m), above what the reference carried if that arrow is lighter, below if it is heavier.
   */
  @Test
  void theStricterYardstickTurnsAtTheReferencesMass() {
    for (int i = 0; i < 2_000; i++) {
      VirtualMass served = exact(between(20, 60), between(0.003, 0.02));
      VirtualMass other = exact(between(20, 60), between(0.003, 0.02));
      Quantity arrow = Quantity.exact(between(0.02, 0.06));
      double byMomentum = new Target.Momentum(served.momentumNs(arrow)).leastMassKg(other);
      double byEnergy = new Target.KineticEnergy(served.kineticEnergyJ(arrow)).leastMassKg(other);

      boolean energyIsStricter = Double.isNaN(byEnergy) || byEnergy > byMomentum;
      assertThat(energyIsStricter).as("seed %d", seed).isEqualTo(byMomentum > arrow.value());
    }
  }

  /** JCGM 100:2008, 5.2: an error that both bows' speeds share leaves the mass alone. */
  @Test
  void theGatesOwnErrorCancelsAgainstATargetShotOverThem() {
    Source gates = Source.common("gates");
    VirtualMass bow = new VirtualMass(Quantity.of(50, 0.5, gates), Quantity.exact(0.01));
    VirtualMass served = new VirtualMass(Quantity.of(40, 0.4, gates), Quantity.exact(0.01));
    Quantity asked = served.kineticEnergyJ(Quantity.exact(0.03));

    Reach shared = Reach.of(bow, new Target.KineticEnergy(asked), 0.95);
    Reach typed = Reach.of(bow, new Target.KineticEnergy(Quantity.exact(asked.value())), 0.95);

    assertThat(shared.intervalKg().halfWidth()).isLessThan(1e-9);
    assertThat(typed.intervalKg().halfWidth()).isGreaterThan(1e-4);
  }

  /** The inversion's definition: at each end the target lies just on the energy's interval. */
  @Test
  void theEndsAreWhereTheTargetLeavesTheInterval() {
    VirtualMass bow =
        new VirtualMass(
            Quantity.of(40, 1, Source.own("fit")), Quantity.of(0.01, 0.001, Source.own("more")));

    Reach reach = Reach.of(bow, new Target.KineticEnergy(Quantity.exact(30)), 0.95);

    Quantity low = bow.kineticEnergyJ(Quantity.exact(reach.intervalKg().low()));
    Quantity high = bow.kineticEnergyJ(Quantity.exact(reach.intervalKg().high()));
    assertThat(low.interval(0.95).high()).isCloseTo(30, within(1e-9));
    assertThat(high.interval(0.95).low()).isCloseTo(30, within(1e-9));
  }

  @Test
  void aVirtualMassBelowZeroIsNoReasonToSayNever() {
    VirtualMass bow = exact(40, -0.005);

    assertThat(new Target.Momentum(Quantity.exact(0.5)).leastMassKg(bow)).isZero();
    assertThat(new Target.KineticEnergy(Quantity.exact(30)).leastMassKg(bow)).isZero();
  }
}
