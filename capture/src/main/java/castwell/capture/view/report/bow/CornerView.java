package castwell.capture.view.report.bow;

import java.util.OptionalDouble;

/** A corner of what energy and virtual mass may be together. */
public record CornerView(OptionalDouble energyFtlbf, OptionalDouble virtualMassGr) {}
