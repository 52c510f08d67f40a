package castwell.capture.view.report.rework;

import java.util.List;
import java.util.Optional;

/**
 * Whether a rework helped, how much of the change was the day, and which of the bow's two numbers
 * moved.
 */
public record ReworkReportView(
    String bow,
    String before,
    String after,
    String stateBefore,
    String stateAfter,
    List<String> controls,
    List<String> sentences,
    ReworkView rework,
    Optional<SameGppView> sameGpp,
    List<ChangedArrow> arrows,
    Optional<MovedView> whatMoved,
    List<ConditionView> conditions) {}
