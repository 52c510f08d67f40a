package castwell.capture.view.report.rework;

import castwell.capture.view.Interval95;
import java.util.OptionalDouble;

/** An arrow that was shot on both days. */
public record ChangedArrow(
    String bow,
    String arrow,
    OptionalDouble massGr,
    int nBefore,
    OptionalDouble beforeFps,
    int nAfter,
    OptionalDouble afterFps,
    OptionalDouble changeFps,
    Interval95 ci95Fps,
    double p) {}
