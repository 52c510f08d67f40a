package castwell.analysis.bow;

import castwell.analysis.speed.KineticEnergy;
import castwell.analysis.speed.Momentum;
import castwell.analysis.uncertainty.Quantity;

/**
 * A bow by the virtual-mass model, with what follows for an arrow of any mass: v = sqrt(2 E / (m +
 * K)) (Klopsteg, Am. J. Phys. 11 (1943) 175). Everything carries the joint uncertainty of E and K.
 *
 * @param energyJ E, the energy that the bow hands over
 * @param virtualMassKg K, the energy that limbs and string keep, told as a mass that moves at arrow
 *     speed
 */
public record VirtualMass(Quantity energyJ, Quantity virtualMassKg) {

  /** The arrow's speed, in m/s; NaN where m + K isn't above 0. */
  public Quantity speedMps(Quantity massKg) {
    return energyJ.times(2).dividedBy(massKg.plus(virtualMassKg)).squareRoot();
  }

  /** The arrow's kinetic energy, E m / (m + K), in J. */
  public Quantity kineticEnergyJ(Quantity massKg) {
    return KineticEnergy.of(massKg, speedMps(massKg));
  }

  /** The arrow's momentum, in kg m/s. */
  public Quantity momentumNs(Quantity massKg) {
    return Momentum.of(massKg, speedMps(massKg));
  }

  /** The share of E that reaches the arrow, m / (m + K), without a unit. */
  public Quantity share(Quantity massKg) {
    return massKg.dividedBy(massKg.plus(virtualMassKg));
  }

  /** The same bow with another energy, such as one that carries its set-ups' common error too. */
  public VirtualMass withEnergy(Quantity energy) {
    return new VirtualMass(energy, virtualMassKg);
  }
}
