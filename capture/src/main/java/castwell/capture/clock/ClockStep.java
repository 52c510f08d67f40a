package castwell.capture.clock;

import java.time.Duration;
import java.time.Instant;

/**
 * A jump of this computer's wall clock.
 *
 * @param to what the clock showed afterwards
 * @param by how far it jumped forward; negative where it jumped back
 */
public record ClockStep(Instant to, Duration by) {}
