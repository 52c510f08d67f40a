package castwell.analysis.unit;

/**
 * The trade's units in terms of SI. Everything inside is SI; these factors convert at the edge.
 *
 * <p>The definitions are exact (NIST SP 811 (2008), appendix B): one grain is 64.79891 mg, one
 * pound 7000 grains, standard gravity 9.80665 m/s2.
 */
public final class Units {
  public static final double METRES_PER_FOOT = 0.3048;
  public static final double METRES_PER_INCH = 0.0254;
  public static final double KILOGRAMS_PER_GRAIN = 64.79891e-6;
  public static final double KILOGRAMS_PER_POUND = 0.45359237;
  public static final double STANDARD_GRAVITY = 9.80665;

  /** The pound as a force. */
  public static final double NEWTONS_PER_POUND = KILOGRAMS_PER_POUND * STANDARD_GRAVITY;

  public static final double JOULES_PER_FOOT_POUND = NEWTONS_PER_POUND * METRES_PER_FOOT;
  public static final double KILOGRAMS_PER_SLUG = NEWTONS_PER_POUND / METRES_PER_FOOT;

  /** One slug foot per second, in kg m/s. */
  public static final double NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND =
      KILOGRAMS_PER_SLUG * METRES_PER_FOOT;

  /** One grain of arrow to a pound of draw weight, in kg/N. */
  public static final double KILOGRAMS_PER_NEWTON_OF_ONE_GPP =
      KILOGRAMS_PER_GRAIN / NEWTONS_PER_POUND;

  private Units() {}

  /**
   * Grains per pound: the arrow's mass in grains over the draw weight in pounds.
   *
   * @param drawWeightN the draw weight, above 0
   */
  public static double grainsPerPound(double massKg, double drawWeightN) {
    return massKg / KILOGRAMS_PER_GRAIN / (drawWeightN / NEWTONS_PER_POUND);
  }
}
