package castwell.web.report;

import castwell.analysis.unit.Units;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;

/**
 * What every report may be asked with.
 *
 * @param gpp grains per pound at which casts are compared
 * @param scaleUN standard uncertainty of a draw weight, in N
 */
public record ReportRequest(double gpp, double scaleUN) {
  public static final double USUAL_GPP = 10;

  /** A hand scale's: common practice, no source. */
  public static final double USUAL_SCALE_U_LB = 0.5;

  /**
   * @throws Refused when a number can't be
   */
  public static ReportRequest of(double gpp, double scaleULb) {
    if (!(gpp > 0 && gpp < 100)) {
      throw Refused.of(Why.INVALID, "refused.gpp", gpp);
    }
    if (!(scaleULb >= 0 && scaleULb < 50)) {
      throw Refused.of(Why.INVALID, "refused.scale", scaleULb);
    }
    return new ReportRequest(gpp, scaleULb * Units.NEWTONS_PER_POUND);
  }
}
