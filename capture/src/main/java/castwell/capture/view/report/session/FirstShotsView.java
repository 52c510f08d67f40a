package castwell.capture.view.report.session;

import castwell.capture.view.Interval95;
import java.util.OptionalDouble;

/** A bow's first shots against its others. */
public record FirstShotsView(
    String bow, OptionalDouble differenceFps, Interval95 ci95Fps, double p) {}
