package castwell.capture.view.station;

import castwell.analysis.speed.Oscillator;
import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.Optional;

/** The dimensions of a station's gates, and since when they hold. */
public record CalibrationView(
    @Meaning("its number") long calibration,
    @Meaning("the first moment that it holds for, UTC") Instant from,
    @Meaning("the moment until which it holds; null while it does, UTC") Optional<Instant> to,
    @Meaning(value = "gate spacing", unit = "millimetre") double spacingMm,
    @JsonProperty("spacing_u_mm") @Meaning(value = "its standard uncertainty", unit = "millimetre")
        double spacingUMm,
    @Meaning(value = "by how much a gate triggers early or late", unit = "millimetre")
        double triggerScatterMm,
    @Meaning(value = "from the bow to the first gate", unit = "metre") double gatesFromBowM,
    Oscillator oscillator,
    @Meaning("when it was entered, UTC") Instant enteredAt,
    @Meaning("who entered it") String enteredBy,
    @Meaning("whether somebody measured the gate spacing") boolean spacingMeasured) {}
