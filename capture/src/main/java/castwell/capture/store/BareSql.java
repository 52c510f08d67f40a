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
 * The statements of the live path by JDBC alone: the nine rows that every passage writes, and what
 * it reads. Through jdbi, binding a row takes several times as long as SQLite needs to store it.
 */
final class BareSql {
  private BareSql() {}

  static void write(Handle handle, String sql, Object... values) {
    use(handle, sql, values, PreparedStatement::executeUpdate);
  }

  /**
   * @param sql a statement that returns one number
   */
  static long returning(Handle handle, String sql, Object... values) {
    return first(handle, (row, context) -> row.getLong(1), sql, values).orElseThrow();
  }

  /**
   * @param mapper doesn't use jdbi's context, which is null here
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

  /** The first row, if there is one. */
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

  /** The value as SQLite stores it; null where it isn't known. */
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
