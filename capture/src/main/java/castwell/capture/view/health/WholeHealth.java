package castwell.capture.view.health;

import castwell.capture.view.Meaning;
import java.time.Instant;
import java.util.List;

/** The health of everything. */
public record WholeHealth(
    @Meaning("when, UTC") Instant at,
    @Meaning("that of the worst item") Level level,
    @Meaning("what all stations of this computer share") PartHealth computer,
    List<StationPart> stations)
    implements HealthTold {}
