package castwell.web.http.api;

import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.web.text.Speech;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * A request's JSON object, read field by field; whatever is wrong with it is said in a sentence.
 */
public final class Body {
  /** In bytes, but for the few requests that bring a sheet or a plan. */
  public static final int LARGEST = 64 * 1024;

  private static final long MOST_PASSED_OVER = 16 * 1024 * 1024;

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .build();

  private final JsonNode node;

  private Body(JsonNode node) {
    this.node = node;
  }

  /**
   * @param fields those that may be in it
   */
  static Body of(Context ctx, String... fields) {
    return of(ctx, LARGEST, fields);
  }

  /**
   * @param largest how many bytes it may have
   */
  static Body of(Context ctx, int largest, String... fields) {
    return of(parse(bytes(ctx, largest)), fields);
  }

  private static Body of(JsonNode node, String... fields) {
    if (!node.isObject()) {
      throw invalid("refused.no_object");
    }
    Set<String> known = Set.of(fields);
    node.fieldNames()
        .forEachRemaining(
            name -> {
              if (!known.contains(name)) {
                throw invalid("refused.no_field", shortened(name), String.join(", ", fields));
              }
            });
    return new Body(node);
  }

  /** Whether or not the request says beforehand how much it sends. */
  private static byte[] bytes(Context ctx, int largest) {
    try {
      InputStream body = ctx.req().getInputStream();
      boolean isTooLarge = ctx.req().getContentLengthLong() > largest;
      byte[] bytes = isTooLarge ? new byte[0] : body.readNBytes(largest + 1);
      if (isTooLarge || bytes.length > largest) {
        passOver(ctx, body);
        throw tooLarge(largest);
      }
      return bytes;
    } catch (IOException e) {
      throw invalid("refused.body_unread");
    }
  }

  /**
   * A connection that is closed while more is on its way is reset, and the answer lost with it; but
   * nobody is listened to for ever.
   */
  private static void passOver(Context ctx, InputStream body) throws IOException {
    if (ctx.req().getContentLengthLong() > MOST_PASSED_OVER) {
      ctx.header("Connection", "close");
      return;
    }
    byte[] some = new byte[16 * 1024];
    long left = MOST_PASSED_OVER;
    int read = 0;
    while (left > 0 && read >= 0) {
      read = body.read(some);
      left -= read;
    }
  }

  private static ContentTooLargeResponse tooLarge(int largest) {
    return new ContentTooLargeResponse(Speech.TRADE.say("refused.body_too_large", largest));
  }

  private static JsonNode parse(byte[] bytes) {
    try {
      return MAPPER.readTree(bytes);
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
      throw invalid("refused.no_json", line);
    } catch (IOException e) {
      throw invalid("refused.body_unread");
    }
  }

  boolean has(String field) {
    return node.has(field);
  }

  String text(String field) {
    return optionalText(field).orElseThrow(() -> invalid("refused.field_missing", field));
  }

  Optional<String> optionalText(String field) {
    JsonNode value = node.path(field);
    if (value.isMissingNode() || value.isNull()) {
      return Optional.empty();
    }
    if (!value.isTextual()) {
      throw invalid("refused.field_text", field);
    }
    return Optional.of(value.textValue());
  }

  /** Texts by name; none when the field is missing. */
  Map<String, String> texts(String field) {
    JsonNode value = node.path(field);
    if (!value.isMissingNode() && !value.isObject()) {
      throw invalid("refused.field_texts_by_name", field);
    }
    Map<String, String> texts = new LinkedHashMap<>();
    for (Map.Entry<String, JsonNode> entry : value.properties()) {
      if (!entry.getValue().isTextual()) {
        throw invalid("refused.field_texts_by_name", field);
      }
      texts.put(entry.getKey(), entry.getValue().textValue());
    }
    return texts;
  }

  double number(String field) {
    OptionalDouble value = optionalNumber(field);
    if (value.isEmpty()) {
      throw invalid("refused.field_missing", field);
    }
    return value.getAsDouble();
  }

  OptionalDouble optionalNumber(String field) {
    JsonNode value = node.path(field);
    if (value.isMissingNode() || value.isNull()) {
      return OptionalDouble.empty();
    }
    if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
      throw invalid("refused.field_number", field);
    }
    return OptionalDouble.of(value.doubleValue());
  }

  /** A number times its unit. */
  OptionalDouble scaled(String field, double unit) {
    OptionalDouble value = optionalNumber(field);
    return value.isPresent()
        ? OptionalDouble.of(value.getAsDouble() * unit)
        : OptionalDouble.empty();
  }

  /** A list of objects with these fields at most; a missing one is refused. */
  List<Body> objects(String field, String... fields) {
    JsonNode list = node.path(field);
    if (!list.isArray()) {
      throw invalid("refused.field_objects", field);
    }
    List<Body> objects = new ArrayList<>();
    list.forEach(item -> objects.add(of(item, fields)));
    return objects;
  }

  /** An object within this one, with these fields at most. */
  Optional<Body> optionalObject(String field, String... fields) {
    JsonNode value = node.path(field);
    return value.isMissingNode() || value.isNull()
        ? Optional.empty()
        : Optional.of(of(value, fields));
  }

  /** None when the field is missing. */
  List<String> textList(String field) {
    JsonNode list = node.path(field);
    List<String> texts = new ArrayList<>();
    for (JsonNode item : list) {
      if (list.isArray() && item.isTextual()) {
        texts.add(item.textValue());
      }
    }
    if (!list.isMissingNode() && !(list.isArray() && texts.size() == list.size())) {
      throw invalid("refused.field_texts", field);
    }
    return texts;
  }

  OptionalInt optionalWhole(String field) {
    JsonNode value = node.path(field);
    if (value.isMissingNode() || value.isNull()) {
      return OptionalInt.empty();
    }
    if (!value.canConvertToInt() || !value.isIntegralNumber()) {
      throw invalid("refused.field_whole", field);
    }
    return OptionalInt.of(value.intValue());
  }

  /** Empty for null; a missing field is refused. */
  Optional<Boolean> truth(String field) {
    JsonNode value = node.path(field);
    if (value.isNull()) {
      return Optional.empty();
    }
    if (!value.isBoolean()) {
      throw invalid("refused.field_boolean", field);
    }
    return Optional.of(value.booleanValue());
  }

  public static Refused invalid(String key, Object... values) {
    return Refused.of(Why.INVALID, key, values);
  }

  private static String shortened(String name) {
    return name.length() <= 40 ? name : name.substring(0, 40) + "...";
  }
}
