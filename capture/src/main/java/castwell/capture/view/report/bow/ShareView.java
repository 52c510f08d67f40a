package castwell.capture.view.report.bow;

import castwell.capture.view.Interval95;
import java.util.OptionalDouble;

/** What an arrow of some mass gets on any day, and how much of the energy reaches it. */
public record ShareView(
    OptionalDouble massGr,
    OptionalDouble speedFps,
    Interval95 ci95AnyDayFps,
    OptionalDouble sharePercent,
    Interval95 shareCi95Percent) {}
