package castwell.capture.view.broker;

import castwell.capture.station.LinkState;
import castwell.capture.view.Meaning;
import java.time.Instant;
import java.util.Optional;

/** The state of a station. */
public record StatusTold(
    @Meaning("where the gates stand") String station,
    @Meaning("whether Castwell is connected to the broker") Presence status,
    @Meaning("Castwell's version") String version,
    @Meaning("how it stands with the board; null when offline") Optional<LinkState.State> link,
    @Meaning("the same in words") String sentence,
    @Meaning("the board's name") Optional<String> device,
    @Meaning("since when the link is so, UTC") Optional<Instant> since) {}
