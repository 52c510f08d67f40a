package castwell.capture.view.request;

import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import castwell.capture.view.Catalogue;
import castwell.capture.view.InUnits;
import com.fasterxml.jackson.databind.JsonNode;
import java.lang.reflect.Type;
import java.util.OptionalDouble;

/** Measures from the fields of a request, which are in the trade's units. */
final class MeasuresReader {
  private MeasuresReader() {}

  /**
   * @param type of a component that holds measures
   */
  static Measures<?> read(JsonNode node, Type type) {
    return Catalogue.of(type).get(0) instanceof BowMeasure
        ? read(node, BowMeasure.values())
        : read(node, ArrowMeasure.values());
  }

  private static <M extends Enum<M> & Measure> Measures<M> read(JsonNode node, M[] catalogue) {
    return Measures.of(
        catalogue,
        measure ->
            InUnits.si(number(node, measure.field()), measure.number().orElseThrow().scale().si()),
        measure -> FieldReader.words(measure.field(), node.path(measure.field())));
  }

  private static OptionalDouble number(JsonNode node, String field) {
    return (OptionalDouble) FieldReader.read(OptionalDouble.class, field, node.path(field));
  }
}
