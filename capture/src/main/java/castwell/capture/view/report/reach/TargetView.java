package castwell.capture.view.report.reach;

import castwell.capture.view.Interval95;
import castwell.capture.view.Meaning;
import java.util.OptionalDouble;

/** The momentum or energy that an arrow is to carry. */
public record TargetView(
    @Meaning("energy, or momentum") String yardstick,
    String unit,
    OptionalDouble value,
    Interval95 ci95) {}
