package castwell.capture.clock;

import java.time.Duration;
import java.time.Instant;

/**
 * This computer's wall clock jumped.
 *
 * @param to what it showed after
 * @param by forward, or back where it is negative
 */
public record ClockStep(Instant to, Duration by) {}
