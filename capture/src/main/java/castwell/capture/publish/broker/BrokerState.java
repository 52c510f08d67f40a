package castwell.capture.publish.broker;

import castwell.analysis.wording.Phrase;
import java.time.Instant;

/**
 * How things stand between a station and the broker.
 *
 * @param sentence the same in words
 * @param since when this began
 * @param waiting how many messages the store holds for the broker
 * @param refused how many wishes on tags/set couldn't be met since the start
 */
public record BrokerState(
    String station,
    boolean connected,
    Phrase sentence,
    Instant since,
    long waiting,
    long refused) {}
