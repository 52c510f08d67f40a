package castwell.analysis.bow;

import castwell.analysis.uncertainty.Quantity;

/**
 * What an arrow should carry. Beside an arrow that has served, momentum is the stricter yardstick
 * where the bow may take a lighter one, energy where it needs a heavier one: p2 / (2 m) is the
 * energy asked for at that arrow's mass alone.
 */
public sealed interface Target {

  /** What is asked for. */
  Quantity wanted();

  /** What the bow gives an arrow of that mass, in the same unit. */
  Quantity given(VirtualMass bow, double massKg);

  /**
   * The least mass by the model's values alone, in kg; NaN where no arrow reaches it. Of a virtual
   * mass below 0, which no bow has, 0 where every arrow reaches it.
   */
  double leastMassKg(VirtualMass bow);

  /** In J. m = T K / (E - T); no arrow has as much as the bow hands over. */
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
   * In kg m/s. m = (P2 + sqrt(P4 + 8 E P2 K)) / (4 E): there is always one. Nothing below the root
   * means a momentum that a virtual mass below 0 exceeds with every arrow.
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
