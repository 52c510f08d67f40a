package castwell.capture.view.rack;

import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** An arrow as it is now. */
public record ArrowEntry(
    @Meaning(value = "as weighed", unit = "grain") double massGr,
    @JsonUnwrapped ArrowMeasures measures)
    implements Request {}
