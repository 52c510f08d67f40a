package castwell.analysis.bow;

/**
 * How well E and K would be known from so many shots of such arrows, before they are shot: s2
 * (J'J)^-1 at the E and K that are expected.
 *
 * @param energySe in J
 * @param virtualMassSe in kg
 */
public record DesignPrecision(double energySe, double virtualMassSe) {

  /**
   * @param massesKg two different ones at least
   * @param shots of each of them
   * @param sdMps one shot's scatter about its mean
   */
  public static DesignPrecision of(
      double energyJ, double virtualMassKg, double[] massesKg, double[] shots, double sdMps) {
    double a = Math.sqrt(2 * energyJ);
    double ff = 0;
    double fg = 0;
    double g2 = 0;
    for (int i = 0; i < massesKg.length; i++) {
      double f = 1 / Math.sqrt(massesKg[i] + virtualMassKg);
      double g = -0.5 * a * f * f * f;
      ff += shots[i] * f * f;
      fg += shots[i] * f * g;
      g2 += shots[i] * g * g;
    }
    double varK = sdMps * sdMps / (g2 - fg * fg / ff);
    double varA = sdMps * sdMps / ff + fg / ff * fg / ff * varK;
    return new DesignPrecision(a * Math.sqrt(varA), Math.sqrt(varK));
  }
}
