package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;

/** Calls, each with what its route says of what is sent and what is answered. */
final class ApiCalls {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final JsonSchemaFactory SCHEMAS =
      JsonSchemaFactory.getInstance(VersionFlag.V202012);

  private final JsonNode document;
  private final Sender sender;
  private final Set<String> well = new LinkedHashSet<>();
  private final Set<String> refused = new LinkedHashSet<>();

  /** Sends a request, with what lets it in. */
  interface Sender {
    Asked send(String method, String path, String body);
  }

  ApiCalls(JsonNode document, Sender sender) {
    this.document = document;
    this.sender = sender;
  }

  /** Those that were answered well so far, as method and path. */
  Set<String> well() {
    return well;
  }

  Set<String> refused() {
    return refused;
  }

  JsonNode get(String path, Object... in) {
    return well("GET", path, "", in);
  }

  /**
   * @param path as the document has it, with its query
   * @param in what stands in the path's braces
   */
  JsonNode well(String method, String path, String body, Object... in) {
    Asked asked = call(method, path, body, in);
    assertThat(asked.status()).as("%s %s: %s", method, path, asked.text()).isBetween(200, 299);
    well.add(name(method, path));
    JsonNode sent = operation(method, path).at("/requestBody/content/application~1json/schema");
    if (!sent.isMissingNode()) {
      assertThat(schema(sent).validate(Asked.read(body))).as("%s %s", method, path).isEmpty();
    }
    return asked.contentType().contains("json") ? asked.json() : MissingNode.getInstance();
  }

  void refused(int status, String method, String path, String body, Object... in) {
    Asked asked = call(method, path, body, in);
    assertThat(asked.status()).as("%s %s: %s", method, path, asked.text()).isEqualTo(status);
    assertThat(asked.contentType()).startsWith("application/problem+json");
    refused.add(name(method, path));
  }

  private Asked call(String method, String path, String body, Object... in) {
    String filled = path;
    for (Object value : in) {
      filled = filled.replaceFirst("\\{[a-z_]+}", String.valueOf(value));
    }
    Asked asked = sender.send(method, filled, body);
    JsonNode responses = operation(method, path).path("responses");
    JsonNode response = responses.path(String.valueOf(asked.status()));
    JsonNode content =
        (response.isMissingNode() ? responses.path("default") : response).path("content");
    if (asked.status() != 204) {
      String type = asked.contentType().split(";")[0];
      JsonNode told =
          content.properties().stream()
              .filter(entry -> entry.getKey().split(";")[0].equals(type))
              .findFirst()
              .orElseThrow(() -> new AssertionError(method + " " + path + " says " + type))
              .getValue()
              .path("schema");
      if (type.endsWith("json")) {
        assertThat(schema(told).validate(asked.json())).as("%s %s", method, path).isEmpty();
      } else {
        assertThat(told.path("type").asText()).isEqualTo("string");
      }
    }
    return asked;
  }

  private JsonNode operation(String method, String path) {
    JsonNode operation =
        document.path("paths").path(path.split("\\?")[0]).path(method.toLowerCase(Locale.ROOT));
    assertThat(operation.isObject()).as("%s %s is told", method, path).isTrue();
    return operation;
  }

  /** With the components that it refers to. */
  private JsonSchema schema(JsonNode told) {
    ObjectNode whole = JSON.createObjectNode();
    whole.setAll((ObjectNode) told);
    whole.set("components", document.path("components"));
    return SCHEMAS.getSchema(whole);
  }

  private static String name(String method, String path) {
    return method.toLowerCase(Locale.ROOT) + " " + path.split("\\?")[0];
  }
}
