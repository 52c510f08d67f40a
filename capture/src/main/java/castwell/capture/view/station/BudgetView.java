package castwell.capture.view.station;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Optional;

/** One source of a speed's uncertainty at a station's gates, or several together. */
public record BudgetView(
    @Meaning("where the gates stand") String station,
    @Meaning("what makes the speed uncertain; all-own, all-common and all are the sums of squares")
        String source,
    @Meaning("own: each shot has an error of its own. common: all shots of the set-up share it")
        Optional<String> kind,
    @JsonProperty("standard_u_percent")
        @Meaning(value = "standard uncertainty as a share of the speed", unit = "percent")
        double standardUPercent,
    @JsonProperty("standard_u_mps")
        @Meaning(value = "standard uncertainty", unit = "metre per second")
        double standardUMps,
    @Meaning(value = "the speed for which it holds", unit = "metre per second") double speedMps,
    @Meaning("the keys of the settings that say how much") Optional<String> setting,
    @Meaning("whether somebody measured the gate spacing") boolean spacingMeasured) {}
