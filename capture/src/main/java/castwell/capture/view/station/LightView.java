package castwell.capture.view.station;

import castwell.capture.view.Meaning;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;

/** What a board's gates see at a heartbeat. */
public record LightView(
    @Meaning("where the gates stand") String station,
    @Meaning("when it came, UTC") Instant at,
    @Meaning("light of 1023") OptionalInt lightA,
    @Meaning("light of 1023") OptionalInt lightB,
    Optional<Seen> gateA,
    Optional<Seen> gateB) {}
