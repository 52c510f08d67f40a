package castwell.capture.view.health;

import castwell.capture.view.Meaning;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** A figure with its uncertainty. */
public record MeasuredView(
    double value,
    String unit,
    @Meaning("standard uncertainty") OptionalDouble u,
    @Meaning("of how many things it was made") OptionalLong n) {}
