package castwell.capture.view.station;

import castwell.capture.view.Meaning;
import java.util.Optional;
import java.util.OptionalDouble;

/** Who shoots what at a station, in trade units. */
public record TagsView(
    @Meaning("where the gates stand") String station,
    @Meaning("the tagged bow") Optional<String> bow,
    @Meaning("since when the bow is as it is") Optional<String> bowState,
    @Meaning(value = "draw weight at the draw length", unit = "pound-force")
        OptionalDouble drawWeightLb,
    @Meaning(value = "draw length of the draw weight", unit = "inch") OptionalDouble drawLengthIn,
    @Meaning("the tagged arrow") Optional<String> arrow,
    @Meaning(value = "mass of the arrow", unit = "grain") OptionalDouble arrowMassGr,
    @Meaning(value = "arrow mass over draw weight", unit = "grain per pound-force")
        OptionalDouble grainsPerPound) {}
