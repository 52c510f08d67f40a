package castwell.capture.view.report.reach;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.OptionalDouble;

/** The lightest arrow with which a bow reaches the target. */
public record ReachedView(
    String bow,
    @Meaning("whether it reaches it, in words") String verdict,
    @Meaning("null where no arrow does, and where any does") OptionalDouble massGr,
    Interval95 ci95Gr,
    OptionalDouble grainsPerPound,
    @Meaning("whether that mass rests on the curve, far from the arrows shot")
        boolean beyondArrows) {}
