package castwell.capture.daemon;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What is in a data folder's tables, read past the program's own code. */
record Tables(Path folder) {

  /** How many rows each table has. */
  Map<String, Long> rows() {
    Map<String, Long> rows = new TreeMap<>();
    for (String table : query("SELECT name FROM sqlite_master WHERE type = 'table'")) {
      rows.put(table, Long.parseLong(query("SELECT count(*) FROM " + table).get(0)));
    }
    return rows;
  }

  /** Every row of a table as text, in the order of its key. */
  List<String> dump(String table) {
    return query("SELECT * FROM " + table + " ORDER BY 1, 2, 3");
  }

  /** The rows, columns parted by commas. */
  List<String> query(String sql) {
    String url = "jdbc:sqlite:" + folder.resolve("castwell.db");
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement();
        ResultSet result = statement.executeQuery(sql)) {
      List<String> rows = new ArrayList<>();
      while (result.next()) {
        List<String> cells = new ArrayList<>();
        for (int column = 1; column <= result.getMetaData().getColumnCount(); column++) {
          cells.add(String.valueOf(result.getString(column)));
        }
        rows.add(String.join(",", cells));
      }
      return rows;
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }
}
