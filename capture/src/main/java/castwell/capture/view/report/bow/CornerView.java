package castwell.capture.view.report.bow;

import java.util.OptionalDouble;

/** A corner of the region in which energy and virtual mass lie together. */
public record CornerView(OptionalDouble energyFtlbf, OptionalDouble virtualMassGr) {}
