package castwell.capture.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** Reads and writes columns that may be empty, which means that the value isn't known. */
final class Columns {
  private Columns() {}

  static OptionalDouble optional(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  static OptionalLong optionalLong(ResultSet row, String column) throws SQLException {
    long value = row.getLong(column);
    return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(value);
  }

  static OptionalInt optionalInt(ResultSet row, String column) throws SQLException {
    int value = row.getInt(column);
    return row.wasNull() ? OptionalInt.empty() : OptionalInt.of(value);
  }

  static Optional<String> optionalText(ResultSet row, String column) throws SQLException {
    return Optional.ofNullable(row.getString(column));
  }
}
