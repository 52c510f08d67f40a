package castwell.capture.view.rack;

import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Optional;

/** A state of a bow to begin. */
public record StateRequest(
    @Meaning("since when it is so; now otherwise") Optional<String> stateOn,
    @Meaning(value = "at the draw length", unit = "pound-force") double drawWeightLb,
    @Meaning(value = "of the draw weight", unit = "inch") double drawLengthIn,
    @JsonUnwrapped Measures<BowMeasure> measures,
    @Meaning("what was done to it") Optional<String> done)
    implements Request {}
