package castwell.capture.view.report.rework;

import castwell.capture.view.Meaning;
import java.util.List;
import java.util.Optional;

/** Whether a rework helped, on any day, and which of the bow's two numbers moved. */
public record ReworkReportView(
    String bow,
    String before,
    String after,
    String stateBefore,
    String stateAfter,
    List<String> sentences,
    ReworkView rework,
    SameGppView sameGpp,
    List<ChangedArrow> arrows,
    @Meaning("null where the arrows are too alike to split energy from virtual mass")
        Optional<MovedView> moved,
    List<ConditionView> conditions) {}
