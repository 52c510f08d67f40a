package castwell.capture.view;

import java.util.Optional;
import java.util.function.Function;

/**
 * One column of a table that leaves the program.
 *
 * @param unit in plain words, empty where there is none
 * @param value takes a row to a text, a whole number, a decimal number or a truth value; empty when
 *     it isn't known
 */
public record Column<R>(
    String name, Type type, String unit, String description, Function<R, Optional<?>> value) {

  public static <R> Column<R> text(
      String name, String description, Function<R, Optional<?>> value) {
    return new Column<>(name, Type.STRING, "", description, value);
  }

  public static <R> Column<R> number(
      String name, String unit, String description, Function<R, Optional<?>> value) {
    return new Column<>(name, Type.NUMBER, unit, description, value);
  }

  /** The types of values, named as CSV on the Web does, by XML Schema datatypes. */
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
