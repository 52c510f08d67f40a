package castwell.capture.daemon;

import castwell.capture.wire.Fault;
import java.time.Duration;
import java.util.Map;

/**
 * How often each fault happened lately.
 *
 * @param over the time that was looked at
 * @param counts of those that happened at all
 */
public record FaultCounts(Duration over, Map<Fault, Long> counts) {}
