package castwell.web.workbench;

import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Rack.BowState;
import castwell.capture.view.StateName;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The form for a bow's state, in the person's units.
 *
 * @param today the date with which a new state begins
 * @param since when the shown state began, "" where there is none
 * @param done what was done at its beginning
 * @param lengthFactor turns a draw length into the API's
 * @param forceFactor turns a force into the API's
 */
public record BowFields(
    String today,
    String since,
    String done,
    List<NumberInput> needed,
    MeasureInputs more,
    double lengthFactor,
    double forceFactor) {

  static BowFields of(Speech speech, ZoneId zone, Instant now, Optional<BowState> state) {
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
        MeasureInputs.of(
            speech, BowMeasure.values(), state.map(BowState::measures).orElseGet(Measures::none)),
        NumberInput.factor(speech, Dimension.DRAW_LENGTH),
        NumberInput.factor(speech, Dimension.FORCE));
  }
}
