package castwell.capture.station;

import castwell.capture.wire.Fault;
import java.time.Duration;
import java.util.Map;

/**
 * How often each fault happened, for those that happened at all.
 *
 * @param sinceStart the counts since this program began to listen
 * @param recent the counts of the last hours
 * @param over how far back the recent counts reach
 */
public record FaultCounts(Map<Fault, Long> sinceStart, Map<Fault, Long> recent, Duration over) {}
