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
 * One connection's prepared statements, kept for reuse: preparing one anew takes longer than most
 * take to run. A statement is lent to one user at a time, who sets all its parameters; clearing
 * them would make SQLite prepare it anew. One thread at a time uses this.
 */
final class KeptStatements extends DefaultStatementBuilder {
  private static final int MOST = 100;

  /**
   * The text that each statement in use was prepared from: on closing, jdbi names the text from
   * before its parameters were numbered.
   */
  private final Map<Statement, String> inUse = new IdentityHashMap<>();

  /** Statements that nobody uses now, the one used longest ago first. */
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
      // The connection is about to be closed, and it closes its statements.
    }
  }
}
