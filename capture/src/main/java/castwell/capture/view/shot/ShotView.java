package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A shot in trade units, the same in exports, on the live feed, for a broker and in the API. Each
 * component is a column; {@link ShotViews} fills it in.
 */
public record ShotView(
    @Meaning("names the shot for ever") String shotId,
    @Meaning("when its first edge was stamped, UTC") Instant firedAt,
    @Meaning("the board's name") Optional<String> device,
    @Meaning("the board's count of its starts") OptionalInt boot,
    @Meaning("number of the passage's first edge since that start") OptionalInt firstEdge,
    @Meaning("the outing") String session,
    @Meaning("the arrows shot before fetching them") int end,
    @Meaning("the tagged bow") Optional<String> bow,
    @Meaning("since when the bow is as it is") Optional<String> bowState,
    @Meaning("the tagged arrow") Optional<String> arrow,
    @Meaning(value = "mass of the arrow", unit = "grain") OptionalDouble arrowMassGr,
    @Meaning(value = "draw weight at the draw length", unit = "pound-force")
        OptionalDouble drawWeightLb,
    @Meaning(value = "draw length of the draw weight", unit = "inch") OptionalDouble drawLengthIn,
    @Meaning("whether it counts: by rule unless a person decided") boolean counts,
    @Meaning("the rules' word: clean, or the most telling reason") String verdict,
    @Meaning("why it doesn't count, or who brought it back") Optional<String> reason,
    @Meaning(
            value = "speed between the gates, from front and tail together",
            unit = "foot per second")
        OptionalDouble speedFps,
    @JsonProperty("speed_u_own_fps")
        @Meaning(
            value = "standard uncertainty of the speed: the shot's own part",
            unit = "foot per second")
        OptionalDouble speedUOwnFps,
    @JsonProperty("speed_u_common_fps")
        @Meaning(
            value = "standard uncertainty of the speed: the part common to the set-up",
            unit = "foot per second")
        OptionalDouble speedUCommonFps,
    @Meaning(value = "speed from the front edges alone", unit = "foot per second")
        OptionalDouble frontFps,
    @Meaning(value = "speed from the tail edges alone", unit = "foot per second")
        OptionalDouble tailFps,
    @Meaning(value = "length of what went through", unit = "millimetre") OptionalDouble lengthMm,
    @Meaning(value = "kinetic energy between the gates", unit = "foot pound-force")
        OptionalDouble kineticEnergyFtlbf,
    @Meaning(value = "momentum between the gates", unit = "slug foot per second")
        OptionalDouble momentumSlugFps,
    @Meaning(value = "arrow mass over draw weight", unit = "grain per pound-force")
        OptionalDouble grainsPerPound,
    @Meaning("where the gates stand") String station,
    @JsonProperty("kinetic_energy_u_ftlbf")
        @Meaning(
            value = "standard uncertainty of the kinetic energy, mass taken as exact",
            unit = "foot pound-force")
        OptionalDouble kineticEnergyUFtlbf,
    @JsonProperty("momentum_u_slug_fps")
        @Meaning(
            value = "standard uncertainty of the momentum, mass taken as exact",
            unit = "slug foot per second")
        OptionalDouble momentumUSlugFps,
    @Meaning(
            value = "speed at the bow, by the drag law; needs the arrow's diameter",
            unit = "foot per second")
        OptionalDouble speedAtBowFps,
    @JsonProperty("speed_at_bow_u_fps")
        @Meaning(value = "standard uncertainty of the speed at the bow", unit = "foot per second")
        OptionalDouble speedAtBowUFps,
    @Meaning("rule, or person") String judgedBy,
    @Meaning("by-gates, or by-hand when its speed was read off another display") String entered,
    @Meaning("what was noted with a speed entered by hand") Optional<String> note,
    @Meaning("whether somebody measured the gate spacing; empty of a speed entered by hand")
        Optional<Boolean> spacingMeasured) {}
