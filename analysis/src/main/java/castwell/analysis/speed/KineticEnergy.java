package castwell.analysis.speed;

import castwell.analysis.uncertainty.Quantity;

/** Kinetic energy: m v^2 / 2. */
public final class KineticEnergy {
  private KineticEnergy() {}

  /** The kinetic energy, in J. */
  public static Quantity of(Quantity massKg, Quantity speedMps) {
    return massKg.times(speedMps).times(speedMps).times(0.5);
  }
}
