package castwell.analysis.bow;

import castwell.analysis.uncertainty.Quantity;

/**
 * What an arrow should carry. When a target is taken from an arrow that has served well, momentum
 * is the stricter target for a bow that would shoot a lighter arrow, and energy for one that needs
 * a heavier arrow, since momentum p and energy p2 / (2 m) ask for the same at that arrow's mass
 * alone.
 */
public sealed interface Target {

  /** The amount that the arrow should carry. */
  Quantity wanted();

  /** What the bow gives an arrow of that mass, in the same unit. */
  Quantity given(VirtualMass bow, double massKg);

  /**
   * The least mass by the model's values alone, in kg; NaN where no arrow reaches the target. For a
   * virtual mass below 0, which no bow has, it is 0 where every arrow reaches the target.
   */
  double leastMassKg(VirtualMass bow);

  /** A target in J: m = T K / (E - T). No arrow gets as much as the bow hands over. */
  record KineticEnergy(Quantity wanted) implements Target {
    @Override
    public Quantity given(VirtualMass bow, double massKg) {
      return bow.kineticEnergyJ(Quantity.exact(massKg));
    }

    @Override
    public double leastMassKg(VirtualMass bow) {
      double e = bow.energyJ().value();
      double t = wanted.value();
      return t < e ? Math.max(0, t * bow.virtualMassKg().value() / (e - t)) : Double.NaN;
    }
  }

  /**
   * A target in kg m/s: m = (P2 + sqrt(P4 + 8 E P2 K)) / (4 E), which always exists for a K of 0 or
   * more. A negative number under the root means that, with a virtual mass below 0, every arrow
   * exceeds the target.
   */
  record Momentum(Quantity wanted) implements Target {
    @Override
    public Quantity given(VirtualMass bow, double massKg) {
      return bow.momentumNs(Quantity.exact(massKg));
    }

    @Override
    public double leastMassKg(VirtualMass bow) {
      double e = bow.energyJ().value();
      double k = bow.virtualMassKg().value();
      double p2 = wanted.value() * wanted.value();
      double square = p2 * p2 + 8 * e * p2 * k;
      return square < 0 ? 0 : (p2 + Math.sqrt(square)) / (4 * e);
    }
  }
}
