package castwell.capture.view.report.bow;

import castwell.capture.view.Interval95;
import java.util.OptionalDouble;

/** The part of the stored energy that an arrow takes. */
public record StoredArrowView(
    String session,
    String arrow,
    OptionalDouble massGr,
    OptionalDouble efficiencyPercent,
    Interval95 efficiencyCi95Percent,
    OptionalDouble virtualMassGr,
    Interval95 virtualMassCi95Gr) {}
