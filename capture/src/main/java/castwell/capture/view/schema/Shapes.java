package castwell.capture.view.schema;

import castwell.capture.view.Json;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.victools.jsonschema.generator.SchemaBuilder;

/** The shapes of one document: told once each, and referred to wherever they stand. */
public final class Shapes {
  private final SchemaBuilder builder = SchemaMaker.many();

  public JsonNode one(Class<?> shape) {
    return builder.createSchemaReference(shape);
  }

  public JsonNode listOf(Class<?> shape) {
    ObjectNode list = simple("array");
    list.set("items", one(shape));
    return list;
  }

  public static JsonNode texts() {
    ObjectNode list = simple("array");
    list.set("items", simple("string"));
    return list;
  }

  /**
   * @param type by its name in JSON Schema
   */
  public static ObjectNode simple(String type) {
    return Json.MAPPER.createObjectNode().put("type", type);
  }

  /**
   * All that was referred to so far, by name; the references are whole from then on.
   *
   * @param where they stand in the document
   */
  public JsonNode told(String where) {
    return builder.collectDefinitions(where);
  }
}
