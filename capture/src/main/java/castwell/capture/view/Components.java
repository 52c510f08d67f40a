package castwell.capture.view;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import java.lang.reflect.AnnotatedElement;
import java.lang.reflect.Field;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Finds how the components of a shape are named in JSON, and which of them can be without a value.
 */
public final class Components {
  private static final Set<Class<?>> OPTIONALS =
      Set.of(Optional.class, OptionalDouble.class, OptionalInt.class, OptionalLong.class);

  private Components() {}

  public static String name(RecordComponent component) {
    return name(component.getAccessor(), component.getName());
  }

  public static String name(Field field) {
    return name(field, field.getName());
  }

  private static String name(AnnotatedElement element, String own) {
    JsonProperty given = element.getAnnotation(JsonProperty.class);
    return given == null || given.value().isEmpty()
        ? SnakeCaseStrategy.INSTANCE.translate(own)
        : given.value();
  }

  /** Whether the components of this one's shape are written among those of the shape around it. */
  public static boolean isUnwrapped(RecordComponent component) {
    return component.getAccessor().isAnnotationPresent(JsonUnwrapped.class);
  }

  public static boolean isUnwrapped(Field field) {
    return field.isAnnotationPresent(JsonUnwrapped.class);
  }

  /** Whether the component is left out when it is empty, and not written as null. */
  public static boolean isLeftOutWhenEmpty(Field field) {
    JsonInclude include = field.getAnnotation(JsonInclude.class);
    return include != null && include.value() == JsonInclude.Include.NON_ABSENT;
  }

  /**
   * @param ofRequest whether it is part of a request
   */
  public static boolean isAlwaysThere(Field field, boolean ofRequest) {
    return ofRequest ? mustBeSent(field) : !isLeftOutWhenEmpty(field);
  }

  private static boolean mustBeSent(Field field) {
    JsonProperty given = field.getAnnotation(JsonProperty.class);
    return given != null && given.required()
        || !OPTIONALS.contains(field.getType())
            && field.getType() != Map.class
            && !isListOfTexts(field);
  }

  public static boolean isRequest(Class<?> shape) {
    return Request.class.isAssignableFrom(shape);
  }

  private static boolean isListOfTexts(Field field) {
    return List.class.equals(field.getType())
        && field.getGenericType().getTypeName().equals("java.util.List<java.lang.String>");
  }

  /** The type inside an optional component, or else the component's own type. */
  public static Type content(Field field) {
    return field.getType() == Optional.class
        ? ((ParameterizedType) field.getGenericType()).getActualTypeArguments()[0]
        : field.getGenericType();
  }
}
