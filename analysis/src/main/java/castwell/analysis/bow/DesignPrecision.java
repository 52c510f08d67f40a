package castwell.analysis.bow;

import java.util.Arrays;

/**
 * How well E and K would be known from a planned number of shots with given arrows: s2 (J'J)^-1 at
 * the E and K that are expected, with J the derivatives of v = sqrt(2 E / (m + K)). {@link
 * VirtualMassFit} gives the same once the shots are made, with s estimated from its residuals.
 *
 * @param energyJ E as expected
 * @param virtualMassKg K as expected
 * @param energySe standard error of E, in J
 * @param virtualMassSe standard error of K, in kg
 * @param correlation the correlation of E and K, -1 to 1; NaN of shots that don't scatter
 */
public record DesignPrecision(
    double energyJ,
    double virtualMassKg,
    double energySe,
    double virtualMassSe,
    double correlation) {

  /**
   * The precision that a design gives. Masses that are all alike tell nothing: the standard errors
   * are then infinite or vast.
   *
   * @param energyJ E as expected, above 0
   * @param virtualMassKg K as expected, above minus the lightest mass
   * @param massesKg the arrows' masses, at least two of them different
   * @param shots the number of shots with each of these masses
   * @param sdMps one shot's standard deviation about its mean
   */
  public static DesignPrecision of(
      double energyJ, double virtualMassKg, double[] massesKg, double[] shots, double sdMps) {
    double a = Math.sqrt(2 * energyJ);
    double ff = 0;
    double fg = 0;
    for (int i = 0; i < massesKg.length; i++) {
      double f = 1 / Math.sqrt(massesKg[i] + virtualMassKg);
      ff += shots[i] * f * f;
      fg += shots[i] * f * byVirtualMass(a, f);
    }
    double gg = 0;
    for (int i = 0; i < massesKg.length; i++) {
      double f = 1 / Math.sqrt(massesKg[i] + virtualMassKg);
      double g = byVirtualMass(a, f) - fg / ff * f;
      gg += shots[i] * g * g;
    }
    double seK = sdMps / Math.sqrt(gg);
    double along = -fg / ff * seK;
    double seA = Math.hypot(sdMps / Math.sqrt(ff), along);
    return new DesignPrecision(energyJ, virtualMassKg, a * seA, seK, along / seA);
  }

  /** The same with one number of shots for every mass. */
  public static DesignPrecision of(
      double energyJ, double virtualMassKg, double[] massesKg, double shotsEach, double sdMps) {
    double[] shots = new double[massesKg.length];
    Arrays.fill(shots, shotsEach);
    return of(energyJ, virtualMassKg, massesKg, shots, sdMps);
  }

  private static double byVirtualMass(double a, double f) {
    return -0.5 * a * f * f * f;
  }
}
