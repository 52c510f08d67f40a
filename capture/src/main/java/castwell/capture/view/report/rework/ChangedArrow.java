package castwell.capture.view.report.rework;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.OptionalDouble;

/** An arrow that was shot both before and after. */
public record ChangedArrow(
    String bow,
    String arrow,
    OptionalDouble massGr,
    int nBefore,
    OptionalDouble beforeFps,
    int nAfter,
    OptionalDouble afterFps,
    OptionalDouble changeFps,
    @Meaning("by the scatter of the shots, as if days and gates were alike")
        Interval95 ci95RepeatsAloneFps,
    @Meaning("likewise") double pRepeatsAlone,
    @Meaning("whether its speeds are those at the bow or those at the gates: bow, or gates")
        String speedAt) {}
