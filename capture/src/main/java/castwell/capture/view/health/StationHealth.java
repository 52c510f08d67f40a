package castwell.capture.view.health;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;

/** The health of a station, with the items that it shares with others. */
public record StationHealth(
    @Meaning("where the gates stand") String station,
    @Meaning("when, UTC") Instant at,
    @JsonUnwrapped PartHealth health)
    implements HealthTold {}
