package castwell.capture.view.report.plan;

import java.util.List;
import java.util.OptionalInt;

/** How many shots see a change, with which arrows, in which order. */
public record PlanReportView(
    List<String> sentences,
    int shotsPerCell,
    double shotsPerCellExact,
    int cellsCompared,
    double changeFps,
    double power,
    double alpha,
    double sdFps,
    OptionalInt sdDegreesOfFreedom,
    List<String> bows,
    List<String> arrows,
    long seed,
    List<PlannedTurn> order) {}
