package castwell.capture.station;

import castwell.capture.wire.Fault;
import java.time.Duration;
import java.util.Map;

/**
 * How often each fault happened, of those that happened at all.
 *
 * @param sinceStart since this program began to listen
 * @param over how far back the recent ones reach
 */
public record FaultCounts(Map<Fault, Long> sinceStart, Map<Fault, Long> recent, Duration over) {}
