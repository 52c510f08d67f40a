package castwell.analysis.bow;

/**
 * What a heavier string costs in speed: a third of its mass moves as the arrow does (Hickman,
 * "Effect of String Weight on Arrow Velocity and Efficiency of Bows", in Hickman, Nagler and
 * Klopsteg, Archery: the Technical Side (1947)).
 */
public final class StringMass {
  private static final double SHARE = 1.0 / 3;

  private StringMass() {}

  /** The virtual mass with a string that is heavier by this much; all in kg. */
  public static double virtualMassKg(double virtualMassKg, double stringHeavierByKg) {
    return virtualMassKg + SHARE * stringHeavierByKg;
  }
}
