package castwell.capture.view.report.session;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.OptionalDouble;

/** A bow's first shots against its others. */
public record FirstShotsView(
    String bow,
    OptionalDouble differenceFps,
    Interval95 ci95Fps,
    @Meaning("adjusted for all bows of the session") double pHolm) {}
