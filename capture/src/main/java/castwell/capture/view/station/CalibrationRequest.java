package castwell.capture.view.station;

import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Optional;
import java.util.OptionalDouble;

/** The dimensions of a station's gates. Those that aren't given stay as they were. */
public record CalibrationRequest(
    @Meaning("the first moment that it holds for; now otherwise") Optional<String> from,
    @Meaning("until when; until the next otherwise") Optional<String> to,
    @Meaning(value = "gate spacing", unit = "millimetre") OptionalDouble spacingMm,
    @JsonProperty("spacing_u_mm") @Meaning(value = "its standard uncertainty", unit = "millimetre")
        OptionalDouble spacingUMm,
    @Meaning(value = "by how much a gate triggers early or late", unit = "millimetre")
        OptionalDouble triggerScatterMm,
    @Meaning(value = "from the bow to the first gate", unit = "metre") OptionalDouble gatesFromBowM,
    Optional<String> oscillator)
    implements Request {}
