package castwell.capture.view.station;

import castwell.capture.station.LinkState;
import castwell.capture.view.Meaning;
import java.time.Instant;
import java.util.Optional;

/** The state of the link between a station and its board. */
public record LinkView(
    @Meaning("where the gates stand") String station,
    @Meaning("where the board is, or is looked for") String port,
    LinkState.State state,
    @Meaning("the same in words") String sentence,
    @Meaning("the board's name") Optional<String> device,
    Optional<Seen> gateA,
    Optional<Seen> gateB,
    @Meaning("since when it is so, UTC") Instant since) {}
