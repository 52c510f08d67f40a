package castwell.capture.view.report.rework;

import java.util.OptionalDouble;

/** What else differed between two days. */
public record ConditionView(String what, String sentence, OptionalDouble effectPercent) {}
