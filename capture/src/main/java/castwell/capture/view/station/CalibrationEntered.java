package castwell.capture.view.station;

import castwell.capture.view.Meaning;
import java.time.Instant;

/** The effect of a calibration that was entered. */
public record CalibrationEntered(
    @Meaning("where the gates stand") String station,
    @Meaning("the first moment that it holds for, UTC") Instant from,
    @Meaning("how many shots it covers") int shotsDerivedAnew) {}
