package castwell.capture.view.report.bow;

import java.util.OptionalDouble;

/** Speed over mass as a straight line. */
public record StraightLineView(
    OptionalDouble interceptFps,
    OptionalDouble interceptSe,
    OptionalDouble slopeFpsPerGr,
    OptionalDouble slopeSe,
    OptionalDouble residualSdFps,
    int degreesOfFreedom) {}
