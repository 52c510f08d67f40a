package castwell.capture.view.gates;

import castwell.analysis.gates.FrontOverTail;
import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.OptionalDouble;

/** Whether tails came late against fronts, or gate B saw more of the arrows than gate A. */
public record FrontOverTailView(
    @Meaning("shots that count and have four edges") int n,
    @Meaning(
            value = "how late the tails came, or how much more of an arrow gate B saw",
            unit = "millimetre")
        double tailsLateMm,
    @JsonProperty("tails_late_u_mm")
        @Meaning(value = "its standard uncertainty", unit = "millimetre")
        double tailsLateUMm,
    @Meaning("whether that is more than chance, and enough to matter") boolean named,
    @Meaning(
            value = "what the mean of front and tail reads too little if the tails were slowed",
            unit = "percent")
        double speedPercent,
    @Meaning(
            value = "scatter of the place on an arrow at which a gate triggers, from ten shots on",
            unit = "millimetre")
        OptionalDouble triggerScatterMm,
    @JsonProperty("trigger_scatter_u_mm")
        @Meaning(value = "its standard uncertainty", unit = "millimetre")
        OptionalDouble triggerScatterUMm) {

  static FrontOverTailView of(FrontOverTail told, double spacingM) {
    OptionalDouble trigger = told.triggerM();
    return new FrontOverTailView(
        told.n(),
        -told.meanM() * 1e3,
        told.uM() * 1e3,
        told.named(spacingM),
        -told.relativeEffect(spacingM) * 100,
        trigger.isPresent() ? OptionalDouble.of(trigger.getAsDouble() * 1e3) : trigger,
        trigger.isPresent() ? OptionalDouble.of(told.triggerUM() * 1e3) : trigger);
  }
}
