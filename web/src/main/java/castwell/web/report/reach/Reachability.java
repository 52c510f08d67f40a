package castwell.web.report.reach;

import castwell.web.report.ReportFormat;
import java.util.Locale;

/** Whether a bow reaches what is wanted. */
public enum Reachability {
  YES,
  /** With an arrow below 8 grains per pound. */
  YES_LIGHT,
  /** With an arrow beyond what anybody shoots. */
  ONLY_HEAVY,
  PERHAPS_NEVER,
  NEVER_UNSURE,
  NEVER;

  boolean isYes() {
    return this == YES || this == YES_LIGHT;
  }

  public String words(ReportFormat format) {
    return format.say("report.reach." + name().toLowerCase(Locale.ROOT));
  }
}
