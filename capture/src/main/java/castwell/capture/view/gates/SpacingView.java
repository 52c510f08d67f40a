package castwell.capture.view.gates;

import castwell.analysis.gates.SpacingFromLengths;
import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;

/** The gates' spacing as arrows of known length tell it. */
public record SpacingView(
    @Meaning("shots of arrows of known length") int n,
    @Meaning("how many arrows that were") int arrows,
    @Meaning(value = "the longest less the shortest of them", unit = "millimetre")
        double lengthsApartMm,
    @Meaning(value = "the spacing", unit = "millimetre") double spacingMm,
    @JsonProperty("spacing_u_mm") @Meaning(value = "its standard uncertainty", unit = "millimetre")
        double spacingUMm,
    @Meaning(value = "how much longer the gates see an arrow than it is", unit = "millimetre")
        double widthMm,
    @JsonProperty("width_u_mm") @Meaning(value = "its standard uncertainty", unit = "millimetre")
        double widthUMm,
    @Meaning("whether it and the spacing entered are farther apart than both allow")
        boolean disagrees) {

  static SpacingView of(SpacingFromLengths told) {
    return new SpacingView(
        told.shots(),
        told.arrows(),
        told.apartM() * 1e3,
        told.spacingM().value() * 1e3,
        told.spacingM().standardUncertainty() * 1e3,
        told.widthM().value() * 1e3,
        told.widthM().standardUncertainty() * 1e3,
        told.disagrees());
  }
}
