package castwell.capture.view.request;

import static castwell.capture.view.request.RequestReader.invalid;

import com.fasterxml.jackson.databind.JsonNode;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Reads one field of a request, by the type of its component. An optional one may be missing or
 * null.
 */
final class FieldReader {
  private FieldReader() {}

  /**
   * @param value a missing node where the field isn't there
   */
  static Object read(Type type, String name, JsonNode value) {
    if (type instanceof ParameterizedType of) {
      return many(of.getRawType(), of.getActualTypeArguments()[0], name, value);
    } else if (type == OptionalDouble.class) {
      return isNothing(value) ? OptionalDouble.empty() : OptionalDouble.of(number(name, value));
    } else if (type == OptionalInt.class) {
      return isNothing(value) ? OptionalInt.empty() : OptionalInt.of(whole(name, value));
    } else if (type == boolean.class) {
      return truth(name, value);
    } else if (isNothing(value)) {
      throw invalid("refused.field_missing", name);
    }
    return one((Class<?>) type, name, value);
  }

  static Optional<String> words(String name, JsonNode value) {
    return isNothing(value) ? Optional.empty() : Optional.of(text(name, value));
  }

  private static boolean isNothing(JsonNode value) {
    return value.isMissingNode() || value.isNull();
  }

  private static Object many(Type raw, Type content, String name, JsonNode value) {
    if (raw == Map.class) {
      return textsByName(name, value);
    } else if (raw == List.class) {
      return content == String.class ? texts(name, value) : objects(content, name, value);
    } else if (content == Boolean.class) {
      return value.isNull() ? Optional.empty() : Optional.of(trueFalseOrNull(name, value));
    } else if (content instanceof ParameterizedType list) {
      return value.isMissingNode() ? Optional.empty() : Optional.of(read(list, name, value));
    }
    return isNothing(value) ? Optional.empty() : Optional.of(one((Class<?>) content, name, value));
  }

  private static Object one(Class<?> type, String name, JsonNode value) {
    if (type == String.class) {
      return text(name, value);
    }
    return type == double.class ? number(name, value) : RequestReader.read(value, type);
  }

  private static String text(String name, JsonNode value) {
    if (!value.isTextual()) {
      throw invalid("refused.field_text", name);
    }
    return value.textValue();
  }

  private static double number(String name, JsonNode value) {
    if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
      throw invalid("refused.field_number", name);
    }
    return value.doubleValue();
  }

  private static int whole(String name, JsonNode value) {
    if (!value.canConvertToInt() || !value.isIntegralNumber()) {
      throw invalid("refused.field_whole", name);
    }
    return value.intValue();
  }

  private static boolean truth(String name, JsonNode value) {
    if (value.isNull()) {
      throw invalid("refused.field_true_or_false", name);
    }
    return trueFalseOrNull(name, value);
  }

  private static boolean trueFalseOrNull(String name, JsonNode value) {
    if (!value.isBoolean()) {
      throw invalid("refused.field_boolean", name);
    }
    return value.booleanValue();
  }

  private static List<String> texts(String name, JsonNode list) {
    List<String> texts = new ArrayList<>();
    for (JsonNode item : list) {
      if (list.isArray() && item.isTextual()) {
        texts.add(item.textValue());
      }
    }
    if (!list.isMissingNode() && !(list.isArray() && texts.size() == list.size())) {
      throw invalid("refused.field_texts", name);
    }
    return texts;
  }

  private static List<Object> objects(Type content, String name, JsonNode list) {
    if (!list.isArray()) {
      throw invalid("refused.field_objects", name);
    }
    List<Object> objects = new ArrayList<>();
    list.forEach(item -> objects.add(RequestReader.read(item, (Class<?>) content)));
    return objects;
  }

  private static Map<String, String> textsByName(String name, JsonNode value) {
    if (!value.isMissingNode() && !value.isObject()) {
      throw invalid("refused.field_texts_by_name", name);
    }
    Map<String, String> texts = new LinkedHashMap<>();
    for (Map.Entry<String, JsonNode> entry : value.properties()) {
      if (!entry.getValue().isTextual()) {
        throw invalid("refused.field_texts_by_name", name);
      }
      texts.put(entry.getKey(), entry.getValue().textValue());
    }
    return texts;
  }
}
