package castwell.capture.store;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/**
 * What every passage writes, nine rows, and asks for, by JDBC alone: jdbi takes several times as
 * long to bind a row as SQLite to store it.
 */
final class BareSql {
  private BareSql() {}

  static void write(Handle handle, String sql, Object... values) {
    use(handle, sql, values, PreparedStatement::executeUpdate);
  }

  /**
   * @param sql which returns one number
   */
  static long returning(Handle handle, String sql, Object... values) {
    return first(handle, (row, context) -> row.getLong(1), sql, values).orElseThrow();
  }

  /**
   * @param mapper which needs nothing of jdbi's context
   */
  static <T> List<T> list(Handle handle, RowMapper<T> mapper, String sql, Object... values) {
    return use(
        handle,
        sql,
        values,
        statement -> {
          try (ResultSet row = statement.executeQuery()) {
            List<T> all = new ArrayList<>();
            while (row.next()) {
              all.add(mapper.map(row, null));
            }
            return all;
          }
        });
  }

  /** The first row, where there is any. */
  static <T> Optional<T> first(Handle handle, RowMapper<T> mapper, String sql, Object... values) {
    return list(handle, mapper, sql, values).stream().findFirst();
  }

  @FunctionalInterface
  private interface Use<T> {
    T of(PreparedStatement statement) throws SQLException;
  }

  private static <T> T use(Handle handle, String sql, Object[] values, Use<T> use) {
    KeptStatements kept = (KeptStatements) handle.getStatementBuilder();
    try {
      PreparedStatement statement = kept.take(handle.getConnection(), sql);
      try {
        for (int i = 0; i < values.length; i++) {
          statement.setObject(i + 1, plain(values[i]));
        }
        return use.of(statement);
      } finally {
        kept.giveBack(statement);
      }
    } catch (SQLException e) {
      throw new UnableToExecuteStatementException(e, null);
    }
  }

  /** As SQLite has it; null where a value isn't known. */
  private static Object plain(Object value) {
    if (value instanceof OptionalDouble optional) {
      return optional.isPresent() ? optional.getAsDouble() : null;
    } else if (value instanceof OptionalLong optional) {
      return optional.isPresent() ? optional.getAsLong() : null;
    } else if (value instanceof OptionalInt optional) {
      return optional.isPresent() ? optional.getAsInt() : null;
    } else if (value instanceof Optional<?> optional) {
      return optional.map(BareSql::plain).orElse(null);
    } else if (value instanceof Instant instant) {
      return instant.toEpochMilli();
    }
    return value;
  }
}
