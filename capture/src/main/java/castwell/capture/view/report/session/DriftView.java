package castwell.capture.view.report.session;

import castwell.capture.view.Interval95;
import java.util.OptionalDouble;

/** How the speed drifted over an outing. */
public record DriftView(OptionalDouble fpsPerHour, Interval95 ci95FpsPerHour, double p) {}
