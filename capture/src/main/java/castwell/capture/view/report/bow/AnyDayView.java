package castwell.capture.view.report.bow;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A bow's energy and virtual mass on any day, as a pair; all null where the arrows are too alike.
 */
public record AnyDayView(
    @Meaning("in how many sessions it was shot in this state") int sessions,
    @Meaning("whether the arrows' masses split energy from virtual mass") boolean split,
    OptionalDouble energyFtlbf,
    Interval95 energyCi95Ftlbf,
    @Meaning("null where it comes out below zero, which no bow's is") OptionalDouble virtualMassGr,
    Interval95 virtualMassCi95Gr,
    @Meaning("corners of the region in which both lie together, 95 %") List<CornerView> jointRegion,
    boolean jointRegionOpen) {}
