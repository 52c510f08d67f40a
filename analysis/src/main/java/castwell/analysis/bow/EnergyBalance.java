package castwell.analysis.bow;

/**
 * Whether two measurements of one bow with one arrow, say with two strings, agree: what is stored
 * is the same, so efficiencies go as kinetic energies do.
 *
 * @param energyRatio kinetic energies, second over first
 * @param efficiencyRatio likewise
 */
public record EnergyBalance(double energyRatio, double efficiencyRatio) {
  /** Speeds and efficiencies told to two or three digits agree within this: no source. */
  public static final double TOLERANCE = 0.02;

  public static EnergyBalance of(
      double speed, double efficiency, double otherSpeed, double otherEfficiency) {
    double ratio = otherSpeed / speed;
    return new EnergyBalance(ratio * ratio, otherEfficiency / efficiency);
  }

  public boolean isConsistent() {
    return Math.abs(energyRatio / efficiencyRatio - 1) <= TOLERANCE;
  }
}
