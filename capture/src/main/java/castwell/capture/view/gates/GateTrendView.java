package castwell.capture.view.gates;

import castwell.analysis.gates.Trend;
import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;

/** How front over tail changed over the session. */
public record GateTrendView(
    @Meaning("shots that count and have four edges") int n,
    @Meaning(value = "from the first shot to the last", unit = "second") double seconds,
    @Meaning(value = "how much later the tails came at its end", unit = "millimetre")
        double tailsLaterMm,
    @JsonProperty("tails_later_u_mm")
        @Meaning(value = "its standard uncertainty", unit = "millimetre")
        double tailsLaterUMm,
    @Meaning("whether that is more than chance, and enough to matter") boolean named) {

  static GateTrendView of(Trend told, double spacingM) {
    return new GateTrendView(
        told.n(),
        told.seconds(),
        -told.changeM().value() * 1e3,
        told.changeM().standardUncertainty() * 1e3,
        told.named(spacingM));
  }
}
