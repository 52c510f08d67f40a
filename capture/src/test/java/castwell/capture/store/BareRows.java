package castwell.capture.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/** All rows of a store in memory, to be written to another by nothing but JDBC. */
public final class BareRows {
  private static final int ROWS_A_COMMIT = 10_000;

  /** After what they refer to. */
  private static final List<String> TABLES =
      List.of(
          "board",
          "listening",
          "identity",
          "calibration",
          "session",
          "edge",
          "heartbeat",
          "passage",
          "figure",
          "shot_tag",
          "feed");

  private final Map<String, List<Object[]>> rows = new LinkedHashMap<>();

  private BareRows() {}

  public static BareRows of(Path folder) {
    BareRows all = new BareRows();
    try (Handle handle = Databases.jdbi(folder.resolve(Store.FILE)).open()) {
      for (String table : TABLES) {
        all.rows.put(table, read(handle.getConnection(), table));
      }
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
    return all;
  }

  private static List<Object[]> read(Connection connection, String table) throws SQLException {
    List<Object[]> rows = new ArrayList<>();
    try (var statement = connection.createStatement();
        ResultSet found = statement.executeQuery("SELECT * FROM " + table)) {
      int columns = found.getMetaData().getColumnCount();
      while (found.next()) {
        Object[] row = new Object[columns];
        for (int i = 0; i < columns; i++) {
          row[i] = found.getObject(i + 1);
        }
        rows.add(row);
      }
    }
    return rows;
  }

  public int count() {
    return rows.values().stream().mapToInt(List::size).sum();
  }

  /** Into a new folder, with the same tables, indexes and triggers. */
  public void writeTo(Path folder) {
    Store.open(folder).close();
    try (Handle handle = Databases.jdbi(folder.resolve(Store.FILE)).open()) {
      Connection connection = handle.getConnection();
      connection.setAutoCommit(false);
      for (Map.Entry<String, List<Object[]>> table : rows.entrySet()) {
        if (!table.getValue().isEmpty()) {
          write(connection, table.getKey(), table.getValue());
        }
      }
      connection.commit();
      connection.setAutoCommit(true);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void write(Connection connection, String table, List<Object[]> rows)
      throws SQLException {
    String marks = String.join(", ", Collections.nCopies(rows.get(0).length, "?"));
    String sql = "INSERT INTO %s VALUES (%s)".formatted(table, marks);
    try (PreparedStatement insert = connection.prepareStatement(sql)) {
      int written = 0;
      for (Object[] row : rows) {
        for (int i = 0; i < row.length; i++) {
          insert.setObject(i + 1, row[i]);
        }
        insert.executeUpdate();
        if (++written % ROWS_A_COMMIT == 0) {
          connection.commit();
        }
      }
    }
  }
}
