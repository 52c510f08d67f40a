package castwell.capture.view.schema;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The document that describes an API's requests and answers (OpenAPI 3.1).
 *
 * @param paths each with its operations by method
 */
public record OpenApi(
    String openapi,
    Info info,
    Map<String, Map<String, Operation>> paths,
    Components components,
    List<Map<String, List<String>>> security) {

  public record Info(String title, String version, String description) {}

  /**
   * @param responses by their status codes
   */
  public record Operation(
      String summary,
      List<Parameter> parameters,
      @JsonProperty("requestBody") @JsonInclude(JsonInclude.Include.NON_ABSENT)
          Optional<RequestBody> requestBody,
      Map<String, Response> responses) {}

  /**
   * @param in path, or query
   */
  public record Parameter(
      String name, String in, String description, boolean required, Schema schema) {}

  public record RequestBody(boolean required, Map<String, Content> content) {}

  public record Response(
      String description,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) Map<String, Content> content) {}

  public record Content(Schema schema) {}

  public record Components(
      Schema schemas,
      @JsonProperty("securitySchemes") Map<String, SecurityScheme> securitySchemes) {}

  public record SecurityScheme(String type, String scheme, String description) {}
}
