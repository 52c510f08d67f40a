package castwell.capture.view.gates;

import castwell.analysis.gates.LengthOverKnown;
import castwell.analysis.shot.Gate;
import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;

/** How much longer one gate sees arrows of known length than they are. */
public record GateLengthView(
    Gate gate,
    @Meaning("shots of arrows of known length") int n,
    @Meaning(value = "length seen less length known", unit = "millimetre") double excessMm,
    @JsonProperty("excess_u_mm")
        @Meaning(value = "its standard uncertainty by the shots' scatter", unit = "millimetre")
        double excessUMm) {

  static GateLengthView of(LengthOverKnown told) {
    return new GateLengthView(
        told.gate(),
        told.n(),
        told.excessM().value() * 1e3,
        told.excessM().standardUncertainty() * 1e3);
  }
}
