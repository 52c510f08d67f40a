package castwell.capture.view.schema;

import castwell.capture.view.Json;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** A JSON Schema, or a reference to one. */
public record Schema(@JsonValue JsonNode node) {

  /**
   * @param type its name in JSON Schema
   */
  public static Schema of(String type) {
    return new Schema(object(type));
  }

  /** The schema of a list. */
  public static Schema listOf(Schema items) {
    ObjectNode list = object("array");
    list.set("items", items.node());
    return new Schema(list);
  }

  private static ObjectNode object(String type) {
    return Json.MAPPER.createObjectNode().put("type", type);
  }
}
