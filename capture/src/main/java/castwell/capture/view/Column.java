package castwell.capture.view;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * One column of a table that leaves the program.
 *
 * @param unit in plain words, empty where there is none
 * @param value of a row: text, a whole number, a decimal number or a truth value; empty when not
 *     known
 */
public record Column<R>(
    String name, Type type, String unit, String description, Function<R, Optional<?>> value) {

  public static <R> Column<R> text(
      String name, String description, Function<R, Optional<?>> value) {
    return new Column<>(name, Type.STRING, "", description, value);
  }

  public static <R> Column<R> whole(
      String name, String description, Function<R, Optional<?>> value) {
    return new Column<>(name, Type.INTEGER, "", description, value);
  }

  public static <R> Column<R> number(
      String name, String unit, String description, Function<R, Optional<?>> value) {
    return new Column<>(name, Type.NUMBER, unit, description, value);
  }

  /** One row as names and values, a null where something isn't known. */
  public static <R> Map<String, Object> row(List<Column<R>> columns, R row) {
    Map<String, Object> values = new LinkedHashMap<>();
    for (Column<R> column : columns) {
      values.put(column.name(), column.value().apply(row).orElse(null));
    }
    return values;
  }

  /** By the names of XML Schema datatypes, as CSV on the Web uses them. */
  public enum Type {
    STRING("string"),
    DATE_TIME("dateTime"),
    INTEGER("integer"),
    NUMBER("number"),
    BOOLEAN("boolean");

    private final String datatype;

    Type(String datatype) {
      this.datatype = datatype;
    }

    public String datatype() {
      return datatype;
    }
  }
}
