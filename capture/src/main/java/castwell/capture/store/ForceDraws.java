package castwell.capture.store;

import castwell.analysis.bow.ForceDrawCurve.Point;
import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Measured force-draw curves, one in force for each state of a bow. */
public final class ForceDraws {
  private static final RowMapper<Point> POINT =
      (row, context) ->
          new Point(
              row.getDouble("draw_length_m"),
              row.getDouble("draw_n"),
              Columns.optional(row, "let_down_n"));

  private final Handle handle;

  /** A point of a curve in force. */
  public record StoredPoint(String bow, Instant stateSince, Point point) {}

  ForceDraws(Handle handle) {
    this.handle = handle;
  }

  /**
   * Adds a curve, which is in force from now on.
   *
   * @param stateSince when the bow's state began
   */
  public void add(long bowId, Instant stateSince, List<Point> points, Instant entered, String by) {
    long id =
        BareSql.returning(
            handle,
            """
                INSERT INTO force_draw (bow_id, state_since_ms, entered_ms, entered_by)
                VALUES (?, ?, ?, ?) RETURNING id""",
            bowId,
            stateSince,
            entered,
            by);
    for (Point point : points) {
      handle
          .createUpdate(
              """
              INSERT INTO force_draw_point (force_draw_id, draw_length_m, draw_n, let_down_n)
              VALUES (?, ?, ?, ?)""")
          .bind(0, id)
          .bind(1, point.drawLengthM())
          .bind(2, point.drawN())
          .bind(3, point.letDownN())
          .execute();
    }
  }

  /** Hands on every curve in force, point by point. */
  public void each(Consumer<StoredPoint> consumer) {
    try (var points =
        handle
            .createQuery(
                """
                SELECT bow.name, state_since_ms, draw_length_m, draw_n, let_down_n FROM force_draw
                JOIN bow ON bow.id = bow_id JOIN force_draw_point ON force_draw_id = force_draw.id
                WHERE force_draw.id IN
                  (SELECT max(id) FROM force_draw GROUP BY bow_id, state_since_ms)
                ORDER BY bow_id, state_since_ms, draw_length_m""")
            .map(
                (row, context) ->
                    new StoredPoint(
                        row.getString("name"),
                        Instant.ofEpochMilli(row.getLong("state_since_ms")),
                        POINT.map(row, context)))
            .stream()) {
      points.forEach(consumer);
    }
  }

  /**
   * The points of the curve in force for a state, the shortest draw first; none where no curve was
   * measured.
   */
  public List<Point> last(long bowId, Instant stateSince) {
    return handle
        .createQuery(
            """
            SELECT draw_length_m, draw_n, let_down_n FROM force_draw_point
            WHERE force_draw_id =
              (SELECT max(id) FROM force_draw WHERE bow_id = ? AND state_since_ms = ?)
            ORDER BY draw_length_m""")
        .bind(0, bowId)
        .bind(1, stateSince)
        .map(POINT)
        .list();
  }
}
