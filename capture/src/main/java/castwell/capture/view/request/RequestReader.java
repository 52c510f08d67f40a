package castwell.capture.view.request;

import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import castwell.capture.view.Catalogue;
import castwell.capture.view.Components;
import castwell.capture.view.Request;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** Reads what somebody sent into a request. Whatever is wrong with it is said in a sentence. */
public final class RequestReader {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .build();

  private RequestReader() {}

  /**
   * @throws Refused when it isn't JSON, or not this request
   */
  public static <Q extends Record & Request> Q read(byte[] json, Class<Q> request) {
    return read(parse(json), request);
  }

  static <Q> Q read(JsonNode node, Class<Q> request) {
    if (!node.isObject()) {
      throw invalid("refused.no_object");
    }
    List<String> known = names(request).toList();
    node.fieldNames()
        .forEachRemaining(
            name -> {
              if (!known.contains(name)) {
                throw invalid("refused.no_field", shortened(name), String.join(", ", known));
              }
            });
    return fields(node, request);
  }

  private static Stream<String> names(Class<?> request) {
    return Arrays.stream(request.getRecordComponents()).flatMap(RequestReader::names);
  }

  private static Stream<String> names(RecordComponent component) {
    if (!Components.isUnwrapped(component)) {
      return Stream.of(Components.name(component));
    }
    return component.getType() == Measures.class
        ? Catalogue.of(component.getGenericType()).stream().map(Measure::field)
        : names(component.getType());
  }

  private static <Q> Q fields(JsonNode node, Class<Q> request) {
    RecordComponent[] components = request.getRecordComponents();
    Object[] values = Arrays.stream(components).map(c -> field(node, c)).toArray();
    return make(request, components, values);
  }

  private static Object field(JsonNode node, RecordComponent component) {
    if (component.getType() == Measures.class) {
      return MeasuresReader.read(node, component.getGenericType());
    }
    if (Components.isUnwrapped(component)) {
      return fields(node, component.getType());
    }
    String name = Components.name(component);
    return FieldReader.read(component.getGenericType(), name, node.path(name));
  }

  private static JsonNode parse(byte[] json) {
    try {
      return MAPPER.readTree(json);
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
      throw invalid("refused.no_json", line);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static <Q> Q make(Class<Q> request, RecordComponent[] components, Object[] values) {
    Class<?>[] types =
        Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
    try {
      return request.getDeclaredConstructor(types).newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  static Refused invalid(String key, Object... values) {
    return Refused.of(Why.INVALID, key, values);
  }

  private static String shortened(String name) {
    return name.length() <= 40 ? name : name.substring(0, 40) + "...";
  }
}
