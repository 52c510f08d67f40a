package castwell.capture.view.report.cell;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.OptionalDouble;

/** A bow's cast at so many grains per pound. */
public record CastView(
    double gpp,
    OptionalDouble massGr,
    OptionalDouble speedFps,
    Interval95 ci95Fps,
    Interval95 ci95WithScaleFps,
    @JsonProperty("common_u_fps") OptionalDouble commonUFps,
    @Meaning("whether its speed is the one at the bow or the one at the gates: bow, or gates")
        String speedAt) {}
