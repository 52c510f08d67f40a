package castwell.web.workbench;

import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import castwell.web.workbench.BowPage.Fact;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Lists what is known of a bow's state or of an arrow, the numbers first. */
final class MeasureFacts {
  private MeasureFacts() {}

  /**
   * @param isTold whether a number is listed even where it isn't known
   */
  static <M extends Enum<M> & Measure> List<Fact> of(
      Speech speech, M[] catalogue, Measures<M> measures, Predicate<M> isTold) {
    List<Fact> facts = new ArrayList<>();
    for (M measure : catalogue) {
      measure
          .number()
          .filter(number -> measures.number(measure).isPresent() || isTold.test(measure))
          .map(number -> speech.plain(Dimension.of(number.scale()), measures.number(measure)))
          .ifPresent(value -> facts.add(new Fact(speech.say(measure.label()), value)));
    }
    measures
        .words()
        .forEach((measure, words) -> facts.add(new Fact(speech.say(measure.label()), words)));
    return facts;
  }
}
