package castwell.web.workbench;

import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Rack.Measures;
import castwell.capture.view.StateName;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is filled in of a bow's state, in the person's units.
 *
 * @param today the date that a new state begins with
 * @param since of the state that is looked at, "" of none
 * @param done what was done at its beginning
 * @param lengthFactor by which a draw length becomes the API's
 * @param forceFactor likewise a force
 */
public record BowFields(
    String today,
    String since,
    String done,
    List<NumberInput> needed,
    List<NumberInput> more,
    String wood,
    double lengthFactor,
    double forceFactor) {

  static BowFields of(Speech speech, ZoneId zone, Instant now, Optional<BowState> state) {
    Measures m = state.map(BowState::measures).orElse(Measures.NONE);
    return new BowFields(
        Days.of(now, zone),
        state.map(s -> StateName.of(s.since(), zone)).orElse(""),
        state.map(BowState::done).orElse(""),
        List.of(
            NumberInput.of(
                speech,
                "draw_weight_lb",
                "rack.draw",
                Dimension.FORCE,
                state.map(s -> OptionalDouble.of(s.drawWeightN())).orElse(OptionalDouble.empty())),
            NumberInput.of(
                speech,
                "draw_length_in",
                "bow.length_of_draw",
                Dimension.DRAW_LENGTH,
                state.map(s -> OptionalDouble.of(s.drawLengthM())).orElse(OptionalDouble.empty()))),
        List.of(
            NumberInput.of(
                speech,
                "nock_to_nock_in",
                "bow.nock_to_nock",
                Dimension.DRAW_LENGTH,
                m.nockToNockM()),
            NumberInput.of(
                speech,
                "string_follow_in",
                "bow.string_follow",
                Dimension.LENGTH,
                m.stringFollowM()),
            NumberInput.of(
                speech, "brace_height_in", "bow.brace_height", Dimension.LENGTH, m.braceHeightM()),
            NumberInput.of(speech, "mass_lb", "bow.mass", Dimension.BOW_MASS, m.massKg()),
            NumberInput.of(
                speech, "tip_width_mm", "bow.tip_width", Dimension.FINE_LENGTH, m.tipWidthM()),
            NumberInput.of(
                speech,
                "string_mass_gr",
                "bow.string_mass",
                Dimension.ARROW_MASS,
                m.stringMassKg())),
        m.wood().orElse(""),
        NumberInput.factor(speech, Dimension.DRAW_LENGTH),
        NumberInput.factor(speech, Dimension.FORCE));
  }
}
