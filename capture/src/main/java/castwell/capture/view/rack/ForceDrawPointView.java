package castwell.capture.view.rack;

import castwell.capture.view.Meaning;
import java.util.OptionalDouble;

/** One point of a force-draw curve. */
public record ForceDrawPointView(
    @Meaning(value = "nock groove to pivot point and 1 3/4 in", unit = "inch") double drawLengthIn,
    @Meaning(value = "on the way out", unit = "pound-force") double drawForceLb,
    @Meaning(value = "on the way back", unit = "pound-force") OptionalDouble letDownLb) {}
