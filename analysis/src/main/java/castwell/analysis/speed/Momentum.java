package castwell.analysis.speed;

import castwell.analysis.uncertainty.Quantity;

/** Momentum: m v. */
public final class Momentum {
  private Momentum() {}

  /** The momentum, in kg m/s. */
  public static Quantity of(Quantity massKg, Quantity speedMps) {
    return massKg.times(speedMps);
  }
}
