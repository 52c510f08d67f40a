package castwell.web.workbench;

import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The fields for a catalogue's measures, filled with the present values. A measure that says how
 * another one was taken starts with its usual value.
 */
public record MeasureInputs(List<NumberInput> numbers, List<TextInput> words) {

  static <M extends Enum<M> & Measure> MeasureInputs of(
      Speech speech, M[] catalogue, Measures<M> now) {
    List<NumberInput> numbers = new ArrayList<>();
    List<TextInput> words = new ArrayList<>();
    for (M measure : catalogue) {
      measure
          .number()
          .ifPresentOrElse(
              number ->
                  numbers.add(
                      NumberInput.of(
                          speech,
                          measure.field(),
                          measure.label(),
                          Dimension.of(number.scale()),
                          begun(measure, now))),
              () ->
                  words.add(
                      new TextInput(
                          measure.field(),
                          speech.say(measure.label()),
                          now.words(measure).orElse(""))));
    }
    return new MeasureInputs(numbers, words);
  }

  private static <M extends Enum<M> & Measure> OptionalDouble begun(M measure, Measures<M> now) {
    OptionalDouble known = now.number(measure);
    return known.isPresent()
        ? known
        : measure.usual().stream().mapToDouble(Measure.Usual::si).findFirst();
  }
}
