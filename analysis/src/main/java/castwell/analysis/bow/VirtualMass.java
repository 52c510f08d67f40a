package castwell.analysis.bow;

import castwell.analysis.speed.KineticEnergy;
import castwell.analysis.speed.Momentum;
import castwell.analysis.uncertainty.Quantity;

/**
 * A bow by the virtual-mass model, and what follows from it for an arrow of any mass: v = sqrt(2 E
 * / (m + K)) (Klopsteg, Am. J. Phys. 11 (1943) 175). Everything carries the joint uncertainty of E
 * and K.
 *
 * @param energyJ E: what the bow hands over
 * @param virtualMassKg K: what limbs and string keep, as a mass at arrow speed
 */
public record VirtualMass(Quantity energyJ, Quantity virtualMassKg) {

  /** In m/s. NaN where m + K isn't above 0. */
  public Quantity speedMps(Quantity massKg) {
    return energyJ.times(2).dividedBy(massKg.plus(virtualMassKg)).squareRoot();
  }

  /** In J: E m / (m + K). */
  public Quantity kineticEnergyJ(Quantity massKg) {
    return KineticEnergy.of(massKg, speedMps(massKg));
  }

  /** In kg m/s. */
  public Quantity momentumNs(Quantity massKg) {
    return Momentum.of(massKg, speedMps(massKg));
  }

  /** The share of E that reaches the arrow, m / (m + K): without a unit. */
  public Quantity share(Quantity massKg) {
    return massKg.dividedBy(massKg.plus(virtualMassKg));
  }

  /** The same bow with the energy's share of what a set-up makes all speeds wrong by. */
  public VirtualMass withEnergy(Quantity energy) {
    return new VirtualMass(energy, virtualMassKg);
  }
}
