package castwell.web.http.api;

import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import java.util.stream.Stream;

/** A catalogue's measures as fields of a request, in trade units. */
final class MeasureFields {
  private MeasureFields() {}

  static Stream<String> names(Measure[] catalogue) {
    return Stream.of(catalogue).map(Measure::field);
  }

  static <M extends Enum<M> & Measure> Measures<M> of(Body body, M[] catalogue) {
    return Measures.of(
        catalogue,
        measure -> body.scaled(measure.field(), measure.number().orElseThrow().scale().si()),
        measure -> body.optionalText(measure.field()));
  }
}
