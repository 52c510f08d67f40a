package castwell.capture.view.report.rework;

import java.util.OptionalDouble;

/** A condition that differed between two days besides the rework. */
public record ConditionView(String what, String sentence, OptionalDouble effectPercent) {}
