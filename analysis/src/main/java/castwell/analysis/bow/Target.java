package castwell.analysis.bow;

import castwell.analysis.uncertainty.Quantity;

/**
 * What an arrow should carry. Of an arrow that has served, momentum asks a stronger bow for more
 * mass than energy does; of a weaker bow energy asks for more.
 */
public sealed interface Target {

  /** What is asked for. */
  Quantity wanted();

  /** What the bow gives an arrow of that mass, in the same unit. */
  Quantity given(VirtualMass bow, double massKg);

  /** The least mass by the model's values alone, in kg; NaN where no arrow reaches it. */
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

  /** In kg m/s. m = (P2 + sqrt(P4 + 8 E P2 K)) / (4 E): there is always one. */
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
      return (p2 + Math.sqrt(p2 * p2 + 8 * e * p2 * k)) / (4 * e);
    }
  }
}
