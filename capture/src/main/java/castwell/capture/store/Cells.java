package castwell.capture.store;

import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Weather.Air;
import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;
import org.jdbi.v3.core.statement.PreparedBatch;

/**
 * The sums of cells. A cell is the shots of one bow state with one arrow in one session; its sums
 * are derived, and made anew when anything of the session changes. Whoever makes them judges the
 * shots first.
 */
public final class Cells {
  private static final RowMapper<Session> SESSION = ConstructorMapper.of(Session.class);

  /** A speed near all others: sums of squares about it keep their digits. */
  private static final int MIDDLE_MPS = 45;

  private static final RowMapper<Row> ROW =
      (row, context) ->
          new Row(
              row.getString("session"),
              row.getLong("bow_id"),
              Instant.ofEpochMilli(row.getLong("since_ms")),
              row.getLong("arrow_id"),
              row.getString("set_up"),
              row.getDouble("set_up_u"),
              row.getInt("n"),
              Columns.optional(row, "mean_mps").orElse(Double.NaN),
              row.getDouble("sum_squares"),
              Columns.optional(row, "slowest_mps").orElse(Double.NaN),
              Columns.optional(row, "fastest_mps").orElse(Double.NaN),
              row.getDouble("gates_mean_square"),
              row.getInt("set_aside"),
              row.getDouble("drag"));

  /** The sums of a bow state with one arrow and set-up, over all sessions. */
  private static final String TOGETHER =
      """
      bow_id, since_ms, arrow_id, set_up, coalesce(sum(n * set_up_u) / sum(n), 0) AS set_up_u,
        sum(n) AS n, %1$d + sum(n * (mean_mps - %1$d)) / sum(n) AS mean_mps,
        coalesce(max(0, sum(sum_squares + n * (mean_mps - %1$d) * (mean_mps - %1$d))
          - sum(n * (mean_mps - %1$d)) * sum(n * (mean_mps - %1$d)) / sum(n)), 0) AS sum_squares,
        min(slowest_mps) AS slowest_mps, max(fastest_mps) AS fastest_mps,
        coalesce(sum(n * gates_mean_square) / sum(n), 0) AS gates_mean_square, sum(set_aside) AS set_aside,
        coalesce(sum(n * drag) / sum(n), 0) AS drag
      FROM cell"""
          .formatted(MIDDLE_MPS);

  /**
   * The sessions whose cells aren't made. There are seldom any, and counting them is quicker than
   * looking up each of very many sessions.
   */
  private static final String UNMADE =
      """
      (SELECT 1 WHERE (SELECT count(*) FROM session)
          > (SELECT count(*) FROM cells_made WHERE rules = :rules))
        CROSS JOIN session WHERE NOT EXISTS
          (SELECT 1 FROM cells_made WHERE session_id = session.id AND rules = :rules)""";

  /**
   * The sums over sessions come from the totals; where the cells of one of those sessions are
   * unmade, its share is left out by adding up the others.
   */
  private static final String SUMS =
      """
      WITH unmade AS (SELECT id FROM %3$s),
        mixed AS (SELECT DISTINCT bow_id, since_ms, arrow_id FROM cell WHERE session_id IN unmade)
      SELECT '' AS session, cell_total.* FROM cell_total
        WHERE (bow_id, since_ms, arrow_id) NOT IN mixed AND %1$s
      UNION ALL SELECT '' AS session, %2$s
        WHERE (bow_id, since_ms, arrow_id) IN mixed AND session_id NOT IN unmade AND %1$s
        GROUP BY bow_id, since_ms, arrow_id, set_up""";

  private final Handle handle;

  /**
   * One cell, or several of the same bow state, arrow and set-up together.
   *
   * @param session its name; "" of several
   * @param since when the bow's state began
   * @param meanMps NaN where no shot counts, as are the slowest and the fastest
   * @param drag the share of speed that the air took on the way from the bow and that is added
   *     again, the mean of the shots; 0 where the speeds are those at the gates
   */
  public record Row(
      String session,
      long bowId,
      Instant since,
      long arrowId,
      String setUp,
      double setUpU,
      int n,
      double meanMps,
      double sumSquares,
      double slowestMps,
      double fastestMps,
      double gatesMeanSquare,
      int setAside,
      double drag) {}

  Cells(Handle handle) {
    this.handle = handle;
  }

  /** The sessions whose cells aren't made, or were made by other rules, the first begun first. */
  public List<Session> unmade(int rules) {
    return handle
        .createQuery(
            "SELECT id, station, name, started_ms FROM " + UNMADE + " ORDER BY started_ms, id")
        .bind("rules", rules)
        .map(SESSION)
        .list();
  }

  /** Puts a session's cells in the place of those it had, with the air that they were shot in. */
  public void make(long sessionId, int rules, Air air, List<Row> rows) {
    Set<Key> changed = keys(sessionId);
    handle.execute("DELETE FROM cell WHERE session_id = ?", sessionId);
    handle.execute("DELETE FROM cells_made WHERE session_id = ?", sessionId);
    PreparedBatch batch =
        handle.prepareBatch(
            """
            INSERT INTO cell (session_id, bow_id, since_ms, arrow_id, set_up, set_up_u, n, mean_mps, sum_squares,
              slowest_mps, fastest_mps, gates_mean_square, set_aside, drag)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""");
    for (Row row : rows) {
      batch
          .bind(0, sessionId)
          .bind(1, row.bowId())
          .bind(2, row.since())
          .bind(3, row.arrowId())
          .bind(4, row.setUp())
          .bind(5, row.setUpU())
          .bind(6, row.n())
          .bind(7, known(row.meanMps()))
          .bind(8, row.sumSquares())
          .bind(9, known(row.slowestMps()))
          .bind(10, known(row.fastestMps()))
          .bind(11, row.gatesMeanSquare())
          .bind(12, row.setAside())
          .bind(13, row.drag())
          .add();
    }
    if (!rows.isEmpty()) {
      batch.execute();
    }
    BareSql.write(
        handle,
        "INSERT INTO cells_made (session_id, rules, celsius, humidity) VALUES (?, ?, ?, ?)",
        sessionId,
        rules,
        air.celsius(),
        air.relativeHumidity());
    changed.addAll(keys(sessionId));
    changed.forEach(this::total);
  }

  /** One bow state with one arrow. */
  private record Key(long bowId, long sinceMs, long arrowId) {}

  private Set<Key> keys(long sessionId) {
    return new HashSet<>(
        handle
            .createQuery("SELECT bow_id, since_ms, arrow_id FROM cell WHERE session_id = ?")
            .bind(0, sessionId)
            .map(ConstructorMapper.of(Key.class))
            .list());
  }

  private void total(Key key) {
    String which = " WHERE bow_id = ? AND since_ms = ? AND arrow_id = ?";
    handle.execute("DELETE FROM cell_total" + which, key.bowId(), key.sinceMs(), key.arrowId());
    handle.execute(
        "INSERT INTO cell_total SELECT " + TOGETHER + which + " GROUP BY set_up",
        key.bowId(),
        key.sinceMs(),
        key.arrowId());
  }

  private static Double known(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }

  /** The sessions whose cells are made by these rules, the first begun first. */
  public List<Session> made(int rules) {
    return handle
        .createQuery(
            """
            SELECT id, station, name, started_ms FROM session
            JOIN cells_made ON session_id = session.id AND rules = ? ORDER BY started_ms, id""")
        .bind(0, rules)
        .map(SESSION)
        .list();
  }

  /** The cells of one session, in no order. */
  public Set<Row> ofSession(long sessionId) {
    return handle
        .createQuery(
            """
            SELECT session.name AS session, cell.* FROM cell JOIN session ON session.id = cell.session_id
            WHERE cell.session_id = ?""")
        .bind(0, sessionId)
        .map(ROW)
        .set();
  }

  /** The sums over all sessions of every bow in every state, from cells made by these rules. */
  public List<Row> sums(int rules) {
    return handle
        .createQuery(SUMS.formatted("TRUE", TOGETHER, UNMADE))
        .bind("rules", rules)
        .map(ROW)
        .list();
  }

  /** The sums over all sessions of one bow state, from cells made by these rules. */
  public List<Row> sums(int rules, long bowId, Instant since) {
    return handle
        .createQuery(SUMS.formatted("bow_id = :bow AND since_ms = :since", TOGETHER, UNMADE))
        .bind("rules", rules)
        .bind("bow", bowId)
        .bind("since", since)
        .map(ROW)
        .list();
  }

  /**
   * How far shots scatter within their cells.
   *
   * @param sumSquares over all cells, in m2/s2
   * @param degreesOfFreedom shots less cells
   */
  public record Scatter(double sumSquares, int degreesOfFreedom) {}

  /**
   * The scatter in the made cells of all bows, in every session in which the given bow was shot in
   * that state.
   */
  public Scatter scatter(int rules, long bowId, Instant since) {
    return handle
        .createQuery(
            """
            SELECT coalesce(sum(sum_squares), 0) AS squares, coalesce(sum(n - 1), 0) AS degrees FROM cell
            WHERE n > 0 AND session_id IN (SELECT session_id FROM cell
              JOIN cells_made USING (session_id) WHERE rules = :rules AND bow_id = :bow AND since_ms = :since)""")
        .bind("rules", rules)
        .bind("bow", bowId)
        .bind("since", since)
        .map((row, context) -> new Scatter(row.getDouble("squares"), row.getInt("degrees")))
        .one();
  }

  /** The air of every session whose cells are made and that had a sensor, by the session's name. */
  public Map<String, Air> airs(int rules) {
    Map<String, Air> airs = new HashMap<>();
    handle
        .createQuery(
            """
            SELECT name, celsius, humidity FROM cells_made JOIN session ON session.id = session_id
            WHERE rules = ? AND (celsius IS NOT NULL OR humidity IS NOT NULL)""")
        .bind(0, rules)
        .map(
            (row, context) ->
                airs.put(
                    row.getString("name"),
                    new Air(Columns.optional(row, "celsius"), Columns.optional(row, "humidity"))))
        .list();
    return airs;
  }

  /** The cells with shots that count of every session, the first begun first. */
  public List<Row> bySession(int rules) {
    return handle
        .createQuery(
            """
            SELECT session.name AS session, cell.*
            FROM cell JOIN session ON session.id = cell.session_id
            JOIN cells_made ON cells_made.session_id = session.id AND rules = :rules
            WHERE n > 0 ORDER BY started_ms, session.id""")
        .bind("rules", rules)
        .map(ROW)
        .list();
  }

  /** The cells of one bow in all its states, session by session, the last begun first. */
  public List<Row> ofBow(int rules, long bowId, int most) {
    return handle
        .createQuery(
            """
            SELECT session.name AS session, cell.*
            FROM session CROSS JOIN cell ON cell.session_id = session.id AND bow_id = :bow
            CROSS JOIN cells_made ON cells_made.session_id = session.id AND rules = :rules
            ORDER BY started_ms DESC, session.id DESC LIMIT :most""")
        .bind("rules", rules)
        .bind("bow", bowId)
        .bind("most", most)
        .map(ROW)
        .list();
  }
}
