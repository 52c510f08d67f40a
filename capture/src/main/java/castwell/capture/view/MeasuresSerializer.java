package castwell.capture.view;

import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.BeanProperty;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.ContextualSerializer;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import com.fasterxml.jackson.databind.util.NameTransformer;
import java.io.IOException;
import java.util.List;

/** Writes measures as fields of the shape that holds them, in the trade's units. */
final class MeasuresSerializer extends StdSerializer<Measures<?>> implements ContextualSerializer {
  private static final long serialVersionUID = 1;

  private final transient List<Measure> catalogue;

  MeasuresSerializer() {
    this(List.of());
  }

  private MeasuresSerializer(List<Measure> catalogue) {
    super(Measures.class, false);
    this.catalogue = catalogue;
  }

  @Override
  public JsonSerializer<?> createContextual(SerializerProvider provider, BeanProperty property) {
    return new MeasuresSerializer(Catalogue.of(property.getType().containedType(0).getRawClass()));
  }

  @Override
  public boolean isUnwrappingSerializer() {
    return true;
  }

  @Override
  public JsonSerializer<Measures<?>> unwrappingSerializer(NameTransformer names) {
    return this;
  }

  @Override
  public void serialize(Measures<?> measures, JsonGenerator json, SerializerProvider provider)
      throws IOException {
    for (Measure measure : catalogue) {
      json.writeFieldName(measure.field());
      provider.defaultSerializeValue(value(measures, measure), json);
    }
  }

  private static Object value(Measures<?> measures, Measure measure) {
    return measure
        .number()
        .<Object>map(number -> scaled(measures.numbers().get(measure), number.scale().si()))
        .orElseGet(() -> measures.words().get(measure));
  }

  private static Double scaled(Double si, double unit) {
    return si == null ? null : si / unit;
  }
}
