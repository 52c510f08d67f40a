package castwell.capture.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jdbi.v3.core.statement.DefaultStatementBuilder;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * One connection's prepared statements, kept for the next time: preparing one anew takes longer
 * than most run. Who uses one has it alone, and sets all its parameters: clearing them would have
 * SQLite prepare it anew. Used by one thread at a time.
 */
final class KeptStatements extends DefaultStatementBuilder {
  private static final int MOST = 100;

  /** What each was made of: on closing jdbi tells the text before its parameters had places. */
  private final Map<Statement, String> inUse = new IdentityHashMap<>();

  /** The one used longest ago first. */
  private final Map<String, PreparedStatement> idle = new LinkedHashMap<>();

  @Override
  public PreparedStatement create(Connection connection, String sql, StatementContext context)
      throws SQLException {
    return take(connection, sql);
  }

  @Override
  public void close(Connection connection, String said, Statement statement) throws SQLException {
    giveBack(statement);
  }

  PreparedStatement take(Connection connection, String sql) throws SQLException {
    PreparedStatement kept = idle.remove(sql);
    PreparedStatement statement = kept != null ? kept : connection.prepareStatement(sql);
    inUse.put(statement, sql);
    return statement;
  }

  void giveBack(Statement statement) throws SQLException {
    String sql = inUse.remove(statement);
    if (sql == null || statement.isClosed() || idle.containsKey(sql)) {
      statement.close();
      return;
    }
    idle.put(sql, (PreparedStatement) statement);
    if (idle.size() > MOST) {
      forgetOldest();
    }
  }

  private void forgetOldest() throws SQLException {
    var oldest = idle.values().iterator();
    PreparedStatement unused = oldest.next();
    oldest.remove();
    unused.close();
  }

  @Override
  public void close(Connection connection) {
    idle.values().forEach(KeptStatements::closeQuietly);
    idle.clear();
  }

  private static void closeQuietly(PreparedStatement statement) {
    try {
      statement.close();
    } catch (SQLException e) {
      // The connection is about to be closed, and it with it.
    }
  }
}
