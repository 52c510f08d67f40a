package castwell.capture.view.report.bow;

import castwell.capture.view.Interval95;
import java.util.OptionalDouble;

/** How much of the energy reaches an arrow. */
public record ShareView(
    OptionalDouble massGr,
    OptionalDouble speedFps,
    Interval95 speedCi95Fps,
    OptionalDouble sharePercent,
    Interval95 shareCi95Percent) {}
