package castwell.capture.view.report.cell;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.OptionalDouble;

/** A bow's cast at so many grains per pound. */
public record CastView(
    double gpp,
    OptionalDouble massGr,
    @Meaning("on a typical day, by all sessions") OptionalDouble speedFps,
    @Meaning("for this bow on any day, with the draw weight's scale") Interval95 ci95AnyDayFps,
    @Meaning("on the day it was last shot, with the arrows shot then") OptionalDouble todayFps,
    @Meaning("for that day alone, with those arrows") Interval95 ci95TodayFps,
    @Meaning("the session of that day") String today,
    @Meaning("whether it rests on the curve, since no arrow near that mass was shot")
        boolean beyondArrows,
    @Meaning("whether its speed is the one at the bow or the one at the gates: bow, or gates")
        String speedAt) {}
