package castwell.capture.view;

import castwell.capture.view.Column.Type;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** Turns a shape into a table, in which each of its components is a column. */
public final class Columns {
  private static final Map<Class<?>, Type> TYPES =
      Map.of(
          Instant.class, Type.DATE_TIME,
          int.class, Type.INTEGER,
          long.class, Type.INTEGER,
          OptionalInt.class, Type.INTEGER,
          OptionalLong.class, Type.INTEGER,
          double.class, Type.NUMBER,
          OptionalDouble.class, Type.NUMBER,
          boolean.class, Type.BOOLEAN);

  private Columns() {}

  public static <R extends Record> List<Column<R>> of(Class<R> shape) {
    return Arrays.stream(shape.getRecordComponents()).map(Columns::<R>column).toList();
  }

  private static <R> Column<R> column(RecordComponent component) {
    Meaning meaning = component.getAnnotation(Meaning.class);
    return new Column<>(
        Components.name(component),
        type(component),
        meaning.unit(),
        meaning.value(),
        row -> value(component, row));
  }

  private static Type type(RecordComponent component) {
    return component.getGenericType().getTypeName().equals("java.util.Optional<java.lang.Boolean>")
        ? Type.BOOLEAN
        : TYPES.getOrDefault(component.getType(), Type.STRING);
  }

  private static Optional<?> value(RecordComponent component, Object row) {
    try {
      return Plain.of(component.getAccessor().invoke(row));
    } catch (IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException(e);
    }
  }
}
