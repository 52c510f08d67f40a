package castwell.capture.view.report.session;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.OptionalDouble;

/** Two bows of one session, over the arrows that both shot. */
public record SideBySideView(
    String bow,
    String other,
    @Meaning("by how much the bow was faster that day") OptionalDouble differencePercent,
    @Meaning("for that day with those arrows alone") Interval95 ci95TodayPercent,
    double p) {}
