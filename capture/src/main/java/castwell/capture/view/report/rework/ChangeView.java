package castwell.capture.view.report.rework;

import castwell.capture.view.Interval95;
import java.util.OptionalDouble;

/**
 * A change in speed. Its interval and p are of repeats alone; what set-ups have in common stands
 * beside them.
 */
public record ChangeView(
    OptionalDouble changeFps,
    Interval95 ci95Fps,
    double p,
    OptionalDouble degreesOfFreedom,
    Interval95 ci95WithCommonFps) {}
