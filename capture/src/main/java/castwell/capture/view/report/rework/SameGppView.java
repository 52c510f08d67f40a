package castwell.capture.view.report.rework;

import castwell.capture.view.Interval95;

/** The change at as many grains per pound as before. */
public record SameGppView(
    double changePercent,
    Interval95 ci95Percent,
    double changeFps,
    Interval95 ci95Fps,
    double p,
    double gpp) {}
