package castwell.capture.view.broker;

import castwell.analysis.wording.Phrase;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.view.Meaning;
import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/**
 * A wish received over the broker on who is to shoot what.
 *
 * @param bow its name, empty when it isn't known
 * @param arrow its name, empty when it isn't known
 */
public record TagWish(
    @JsonProperty(required = true) @Meaning("name of a bow on the rack, or null")
        Optional<String> bow,
    @JsonProperty(required = true) @Meaning("name of an arrow on the rack, or null")
        Optional<String> arrow)
    implements Request {
  private static final int MOST_BYTES = 1024;
  private static final Set<String> FIELDS = Set.of("bow", "arrow");
  private static final JsonMapper JSON =
      JsonMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .build();

  /**
   * Reads a wish.
   *
   * @throws Refused when the payload isn't one
   */
  public static TagWish of(byte[] payload) {
    if (payload.length > MOST_BYTES) {
      throw bad("refused.tag_wish_long", MOST_BYTES);
    }
    JsonNode node = parse(payload);
    Set<String> fields = new HashSet<>();
    node.fieldNames().forEachRemaining(fields::add);
    if (!fields.equals(FIELDS)) {
      throw bad("refused.tag_wish_fields");
    }
    return new TagWish(name(node.path("bow")), name(node.path("arrow")));
  }

  private static JsonNode parse(byte[] payload) {
    try {
      return JSON.readTree(payload);
    } catch (IOException e) {
      throw bad("refused.tag_wish_no_json");
    }
  }

  private static Optional<String> name(JsonNode value) {
    if (!value.isNull() && !value.isTextual()) {
      throw bad("refused.tag_wish_name");
    }
    return Optional.ofNullable(value.textValue());
  }

  private static Refused bad(String what, Object... values) {
    return Refused.of(Why.INVALID, "refused.tag_wish", Phrase.of(what, values));
  }
}
