package castwell.capture.publish.broker;

import castwell.analysis.wording.Phrase;
import java.time.Instant;

/**
 * The state of a station's connection to the broker.
 *
 * @param sentence the same in words
 * @param since when this state began
 * @param waiting how many messages the store holds for the broker
 * @param refused how many wishes on tags/set were refused since the start
 */
public record BrokerState(
    String station,
    boolean connected,
    Phrase sentence,
    Instant since,
    long waiting,
    long refused) {}
