package castwell.capture.view.schema;

import castwell.capture.measure.Measures;
import castwell.capture.view.Components;
import com.fasterxml.classmate.ResolvedType;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.victools.jsonschema.generator.CustomDefinition;
import com.github.victools.jsonschema.generator.CustomDefinitionProviderV2;
import com.github.victools.jsonschema.generator.SchemaGenerationContext;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** Lists a shape's own properties together with those of the shapes that are unwrapped in it. */
final class UnwrappedParts implements CustomDefinitionProviderV2 {
  @Override
  public CustomDefinition provideCustomSchemaDefinition(
      ResolvedType type, SchemaGenerationContext context) {
    Class<?> shape = type.getErasedType();
    List<Field> parts =
        shape.isRecord()
            ? Arrays.stream(shape.getDeclaredFields()).filter(Components::isUnwrapped).toList()
            : List.of();
    if (parts.isEmpty()) {
      return null;
    }
    ObjectNode schema = context.createStandardDefinition(type, this);
    parts.forEach(part -> splice(schema, part, Components.isRequest(shape), context));
    return new CustomDefinition(schema);
  }

  private static void splice(
      ObjectNode schema, Field field, boolean ofRequest, SchemaGenerationContext context) {
    String name = Components.name(field);
    ResolvedType content = context.getTypeContext().resolve(Components.content(field));
    ObjectNode part = context.createDefinition(content);
    ObjectNode properties = context.getGeneratorConfig().createObjectNode();
    for (Map.Entry<String, JsonNode> own : schema.path("properties").properties()) {
      if (own.getKey().equals(name)) {
        properties.setAll((ObjectNode) part.path("properties"));
      } else {
        properties.set(own.getKey(), own.getValue());
      }
    }
    ArrayNode required = context.getGeneratorConfig().createArrayNode();
    for (JsonNode own : schema.path("required")) {
      if (!own.asText().equals(name)) {
        required.add(own);
      } else {
        needed(part, content.getErasedType(), ofRequest).forEach(required::add);
      }
    }
    schema.set("properties", properties);
    schema.set("required", required);
  }

  /**
   * The properties that have to be there. One that is null in an answer may be left out of a
   * request.
   */
  private static List<String> needed(ObjectNode part, Class<?> shape, boolean ofRequest) {
    if (ofRequest && shape == Measures.class) {
      return List.of();
    }
    return ofRequest && !Components.isRequest(shape)
        ? Arrays.stream(shape.getDeclaredFields())
            .filter(field -> !Modifier.isStatic(field.getModifiers()))
            .filter(field -> Components.isAlwaysThere(field, true))
            .map(Components::name)
            .toList()
        : part.path("required").valueStream().map(JsonNode::asText).toList();
  }
}
