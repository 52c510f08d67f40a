package castwell.analysis.speed;

/**
 * The part that keeps the board's time, and how far its rate may be from the nominal one. The
 * bounds are those to which such parts are commonly sold (common practice, no source).
 */
public enum Oscillator {
  /** A quartz crystal, whose rate is within 50 parts per million. */
  CRYSTAL(50e-6),
  /** A ceramic resonator, whose rate is within half a percent. */
  RESONATOR(0.005);

  private final double halfWidth;

  Oscillator(double halfWidth) {
    this.halfWidth = halfWidth;
  }

  /** Half the width of the rectangular distribution of the relative error, a pure number. */
  public double halfWidth() {
    return halfWidth;
  }
}
