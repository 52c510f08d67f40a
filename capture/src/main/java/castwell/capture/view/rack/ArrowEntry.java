package castwell.capture.view.rack;

import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** An arrow as it is now. */
public record ArrowEntry(
    @Meaning(value = "as weighed", unit = "grain") double massGr,
    @JsonUnwrapped Measures<ArrowMeasure> measures)
    implements Request {}
