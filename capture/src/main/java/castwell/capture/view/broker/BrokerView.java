package castwell.capture.view.broker;

import castwell.capture.view.Meaning;
import java.time.Instant;

/** The state of a station's connection to the broker. */
public record BrokerView(
    @Meaning("where the gates stand") String station,
    boolean connected,
    @Meaning("the same in words") String sentence,
    @Meaning("since when, UTC") Instant since,
    @Meaning("how many items the broker hasn't acknowledged") long waiting,
    @Meaning("how many wishes were refused since the start") long tagsRefused) {}
