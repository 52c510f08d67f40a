package castwell.capture.view.report.plan;

import castwell.capture.view.Meaning;
import java.util.List;
import java.util.OptionalInt;

/** How many sessions and shots see a change, with which arrows, in which order. */
public record PlanReportView(
    List<String> sentences,
    @Meaning("with each arrow, before and after, both within one session") int shotsPerCell,
    double shotsPerCellExact,
    double changeFps,
    @Meaning(value = "of the bow's speed", unit = "percent") double changePercent,
    double power,
    double alpha,
    double sdFps,
    OptionalInt sdDegreesOfFreedom,
    List<String> bows,
    List<String> arrows,
    OverDaysView overDays,
    long seed,
    @Meaning("of one session") List<PlannedTurn> order) {}
