package castwell.capture.view.report.bow;

import java.util.OptionalDouble;

/** Whether the curve fits the masses. */
public record LackOfFitView(OptionalDouble f, int lackDegrees, int withinDegrees, double p) {}
