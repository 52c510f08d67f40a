package castwell.capture.store;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passage;
import castwell.capture.store.RawFacts.StoredEdge;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Passages: which edges were put together, and to which session and end each belongs. */
public final class Passages {
  private static final String COLUMNS =
      """
      passage.id, shot_id, board_id, boot, first_edge, last_edge, own_edges, first_ticks, board_restarted, edges_dropped, listening_id,
      station, fired_ms, session_id, end_number, calibration_id""";

  private static final RowMapper<Row> ROW =
      (row, context) ->
          new Row(
              row.getLong("id"),
              row.getString("shot_id"),
              row.getLong("board_id"),
              row.getInt("boot"),
              EdgeNumbers.read(row),
              row.getLong("first_ticks"),
              row.getBoolean("board_restarted"),
              row.getBoolean("edges_dropped"),
              row.getLong("listening_id"),
              row.getString("station"),
              Instant.ofEpochMilli(row.getLong("fired_ms")),
              row.getLong("session_id"),
              row.getInt("end_number"),
              row.getLong("calibration_id"));

  private final Handle handle;

  /**
   * A passage as stored; its edges are in the raw facts.
   *
   * @param edges the numbers of its edges, arrived or lost
   * @param firstTicks full ticks of its first edge, from which the others unwrap
   * @param firedMs when its first edge was stamped
   * @param calibrationId of the calibration in force
   */
  public record Row(
      long id,
      String shotId,
      long boardId,
      int boot,
      EdgeNumbers edges,
      long firstTicks,
      boolean boardRestarted,
      boolean edgesDropped,
      long listeningId,
      String station,
      Instant firedMs,
      long sessionId,
      int endNumber,
      long calibrationId) {

    Row(long id, Row other) {
      this(
          id,
          other.shotId,
          other.boardId,
          other.boot,
          other.edges,
          other.firstTicks,
          other.boardRestarted,
          other.edgesDropped,
          other.listeningId,
          other.station,
          other.firedMs,
          other.sessionId,
          other.endNumber,
          other.calibrationId);
    }

    /**
     * Whether the speed was read off another display: there are no edges then, and nothing to
     * derive.
     */
    public boolean isByHand() {
      return boardId == 0;
    }
  }

  Passages(Handle handle) {
    this.handle = handle;
  }

  /**
   * A passage's name: the number of the edge that was its first when it was first stored. That edge
   * stays part of it, whatever edges are found to belong to it later.
   */
  public static String shotId(Board board, int boot, int edge) {
    return ofBoot(board, boot) + edge;
  }

  private static String ofBoot(Board board, int boot) {
    return board.key() + "." + boot + ".";
  }

  /**
   * The passages of one boot that are named after one of these edges, ascending; those that have
   * become part of another come last.
   */
  public List<Row> named(Board board, int boot, EdgeNumbers edges) {
    String boots = ofBoot(board, boot);
    return BareSql.list(
            handle,
            ROW,
            "WITH RECURSIVE called(edge) AS (SELECT ? UNION ALL SELECT edge + 1 FROM called WHERE edge < ?) SELECT "
                + COLUMNS
                + """
                 FROM called CROSS JOIN passage ON shot_id = ? || edge
                ORDER BY part_of IS NOT NULL, first_edge""",
            edges.first(),
            edges.last(),
            boots)
        .stream()
        .filter(row -> edges.has(Integer.parseInt(row.shotId().substring(boots.length()))))
        .toList();
  }

  /**
   * Stores a passage.
   *
   * @param row its id is disregarded
   * @return the same with its id
   */
  public Row insert(Row row) {
    long id =
        BareSql.returning(
            handle,
            """
            INSERT INTO passage (shot_id, board_id, boot, first_edge, last_edge, own_edges, first_ticks,
              board_restarted, edges_dropped, listening_id, station, fired_ms, session_id, end_number, calibration_id)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) RETURNING id""",
            row.shotId(),
            row.boardId(),
            row.boot(),
            row.edges().first(),
            row.edges().last(),
            row.edges().written(),
            row.firstTicks(),
            row.boardRestarted(),
            row.edgesDropped(),
            row.listeningId(),
            row.station(),
            row.firedMs(),
            row.sessionId(),
            row.endNumber(),
            row.calibrationId());
    return new Row(id, row);
  }

  /**
   * Stores a shot whose speed was read off another display.
   *
   * @return the id
   */
  public long enter(String shotId, String station, Instant fired, long sessionId, int end) {
    return BareSql.returning(
        handle,
        """
            INSERT INTO passage (shot_id, board_restarted, edges_dropped, station, fired_ms, session_id, end_number)
            VALUES (?, 0, 0, ?, ?, ?, ?) RETURNING id""",
        shotId,
        station,
        fired,
        sessionId,
        end);
  }

  /** Whether a shot has this name, or had it until it turned out to be part of another. */
  public boolean isKnown(String shotId) {
    return handle
        .createQuery("SELECT count(*) FROM passage WHERE shot_id = ?")
        .bind(0, shotId)
        .mapTo(boolean.class)
        .one();
  }

  /**
   * Stores the passage as it is after late edges: the same shot with other ends, and no longer part
   * of another.
   */
  public void amend(long id, Passage passage, long firstTicks) {
    handle.execute(
        """
        UPDATE passage SET first_edge = ?, last_edge = ?, own_edges = ?, first_ticks = ?, board_restarted = ?,
          edges_dropped = ?, part_of = NULL WHERE id = ?""",
        passage.firstEdge(),
        passage.lastEdge(),
        EdgeNumbers.of(passage).written().orElse(null),
        firstTicks,
        passage.boardRestarted(),
        passage.edgesDropped(),
        id);
  }

  /** Marks a passage as part of another. It is kept, and no longer shown. */
  public void join(long id, long whole) {
    handle.execute("UPDATE passage SET part_of = ? WHERE id = ?", whole, id);
  }

  public void calibrate(long id, long calibrationId) {
    handle.execute("UPDATE passage SET calibration_id = ? WHERE id = ?", calibrationId, id);
  }

  /**
   * Hands on every passage that our gates saw and that isn't part of another, in the order stored.
   */
  public void each(Consumer<Row> consumer) {
    try (var rows =
        handle
            .createQuery(
                "SELECT "
                    + COLUMNS
                    + " FROM passage WHERE part_of IS NULL AND board_id IS NOT NULL ORDER BY id")
            .map(ROW)
            .stream()) {
      rows.forEach(consumer);
    }
  }

  public Optional<Row> byId(long id) {
    return where("passage.id = ?", id).stream().findFirst();
  }

  public Optional<Row> byShotId(String shotId) {
    return where("shot_id = ?", shotId).stream().findFirst();
  }

  /** A session's passages that our gates saw. */
  public List<Row> ofSession(long sessionId) {
    return where("board_id IS NOT NULL AND session_id = ?", sessionId);
  }

  public List<Row> ofStationFrom(String station, Instant from) {
    return where("board_id IS NOT NULL AND station = ? AND fired_ms >= ?", station, from);
  }

  /** The passages that our gates saw and whose last tag names this arrow. */
  public List<Row> ofArrow(long arrowId) {
    return where(
        """
        board_id IS NOT NULL AND passage.id IN (SELECT passage_id FROM shot_tag GROUP BY passage_id
          HAVING max(id) IN (SELECT id FROM shot_tag WHERE arrow_id = ?))""",
        arrowId);
  }

  private List<Row> where(String condition, Object... values) {
    var query =
        handle.createQuery(
            "SELECT "
                + COLUMNS
                + " FROM passage WHERE part_of IS NULL AND "
                + condition
                + " ORDER BY fired_ms, passage.id");
    for (int i = 0; i < values.length; i++) {
      query.bind(i, values[i]);
    }
    return query.map(ROW).list();
  }

  /**
   * The last passages of a boot with their edges, ascending, so that late edges can still amend
   * them after a restart.
   */
  public List<Row> last(long board, int boot, int howMany) {
    List<Row> rows =
        new ArrayList<>(
            handle
                .createQuery(
                    "SELECT "
                        + COLUMNS
                        + """
                         FROM passage WHERE board_id = ? AND boot = ? AND part_of IS NULL
                        ORDER BY first_edge DESC LIMIT ?""")
                .bind(0, board)
                .bind(1, boot)
                .bind(2, howMany)
                .map(ROW)
                .list());
    Collections.reverse(rows);
    return rows;
  }

  /**
   * A stored passage with its edges, their ticks unwrapped. Edge numbers that aren't stored are its
   * lost edges.
   */
  public Passage together(Row row) {
    EdgeNumbers own = row.edges();
    List<Edge> edges =
        new RawFacts(handle)
            .edges(row.boardId(), row.boot(), own.first(), own.last()).stream()
                .filter(edge -> own.has(edge.number()))
                .map((StoredEdge edge) -> edge.unwrapped(row.firstTicks()))
                .toList();
    var arrived = edges.stream().map(Edge::number).collect(Collectors.toSet());
    List<Integer> lost =
        IntStream.rangeClosed(own.first(), own.last())
            .filter(number -> own.has(number) && !arrived.contains(number))
            .boxed()
            .toList();
    return new Passage(edges, lost, row.boardRestarted(), row.edgesDropped());
  }
}
