package castwell.web.report;

import castwell.analysis.unit.Units;

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

  public static final ReportRequest USUAL = of(USUAL_GPP, USUAL_SCALE_U_LB);

  public static ReportRequest of(double gpp, double scaleULb) {
    return new ReportRequest(gpp, scaleULb * Units.NEWTONS_PER_POUND);
  }
}
