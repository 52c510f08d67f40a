package castwell.capture.view.health;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** A station's own items. */
public record StationPart(
    @Meaning("where the gates stand") String station, @JsonUnwrapped PartHealth health) {}
