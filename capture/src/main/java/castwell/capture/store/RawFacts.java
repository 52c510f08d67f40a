package castwell.capture.store;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.speed.StampLatency;
import castwell.capture.wire.Sentence;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.Sentence.Levels;
import java.util.Collection;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;
import org.jdbi.v3.core.result.ResultIterable;

/** What boards said, as they said it. Writing a fact that is already stored changes nothing. */
public final class RawFacts {
  private static final long MASK32 = 0xFFFF_FFFFL;

  private static final RowMapper<StoredBeat> BEAT = ConstructorMapper.of(StoredBeat.class);

  private static final RowMapper<StoredEdge> EDGE =
      (row, context) ->
          new StoredEdge(
              row.getInt("number"),
              Gate.valueOf(row.getString("gate")),
              EdgeKind.ofLetter(row.getString("kind").charAt(0)),
              row.getLong("ticks"),
              row.getInt("late"));

  private final Handle handle;

  /**
   * An edge as stored.
   *
   * @param ticks the board's 32-bit counter
   */
  public record StoredEdge(int number, Gate gate, EdgeKind kind, long ticks, int late) {

    public static StoredEdge of(Edge edge) {
      return new StoredEdge(
          edge.number(), edge.gate(), edge.kind(), edge.ticks() & MASK32, edge.lateTicks());
    }

    /**
     * The edge in full ticks.
     *
     * @param reference the passage's first edge in full ticks
     */
    Edge unwrapped(long reference) {
      return new Edge(number, gate, kind, reference + (int) (ticks - reference), late);
    }
  }

  /** A heartbeat as stored, from which the tick rate is measured. */
  public record StoredBeat(
      int boot, long listeningId, long ticks48, long receivedUs, int queued, int bytes) {}

  RawFacts(Handle handle) {
    this.handle = handle;
  }

  public void identity(long board, long listening, Identity identity, long micros) {
    handle
        .createUpdate(
            """
            INSERT INTO identity
            SELECT :board, :boot, :listening, :micros, :protocol, :firmware, :hz, :latencyANs, :latencyBNs, :keep, :cause
            WHERE NOT EXISTS (SELECT 1 FROM identity
              WHERE board_id = :board AND boot = :boot AND listening_id = :listening)""")
        .bind("board", board)
        .bind("listening", listening)
        .bind("micros", micros)
        .bindMethods(identity)
        .execute();
  }

  public void edges(long board, int boot, Collection<Edge> edges) {
    Set<Integer> known = known(board, boot, edges);
    for (Edge edge : edges) {
      if (!known.contains(edge.number())) {
        BareSql.write(
            handle,
            "INSERT INTO edge VALUES (?, ?, ?, ?, ?, ?, ?)",
            board,
            boot,
            edge.number(),
            edge.gate().name(),
            String.valueOf(edge.kind().letter()),
            edge.ticks() & MASK32,
            edge.lateTicks());
      }
    }
  }

  private Set<Integer> known(long board, int boot, Collection<Edge> edges) {
    IntSummaryStatistics numbers = edges.stream().mapToInt(Edge::number).summaryStatistics();
    return edges(board, boot, numbers.getMin(), numbers.getMax()).stream()
        .map(StoredEdge::number)
        .collect(Collectors.toSet());
  }

  public Optional<StoredEdge> edge(long board, int boot, int number) {
    return edges(board, boot, number, number).stream().findFirst();
  }

  /** The edges of a boot in a range of numbers, both ends included, ascending. */
  public List<StoredEdge> edges(long board, int boot, int first, int last) {
    return BareSql.list(
        handle,
        EDGE,
        """
        SELECT number, gate, kind, ticks, late FROM edge
        WHERE board_id = ? AND boot = ? AND number BETWEEN ? AND ? ORDER BY number""",
        board,
        boot,
        first,
        last);
  }

  /** The highest edge number of a boot, 0 when nothing of that boot is stored. */
  public int highestEdge(long board, int boot) {
    return handle
        .createQuery("SELECT coalesce(max(number), 0) FROM edge WHERE board_id = ? AND boot = ?")
        .bind(0, board)
        .bind(1, boot)
        .mapTo(int.class)
        .one();
  }

  /** The highest boot number heard of a board, -1 for none. */
  public int highestBoot(String device) {
    return handle
        .createQuery(
            """
            SELECT coalesce(max(boot), -1) FROM identity JOIN board ON board.id = board_id
            WHERE device = ?""")
        .bind(0, device)
        .mapTo(int.class)
        .one();
  }

  /**
   * Stores a heartbeat.
   *
   * @param micros when it came, in microseconds since its stretch of listening began
   */
  public void heartbeat(long board, long listening, Heartbeat beat, long micros) {
    if (isKnown(board, beat)) {
      return;
    }
    BareSql.write(
        handle,
        "INSERT INTO heartbeat VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        board,
        beat.boot(),
        beat.ticks48(),
        listening,
        micros,
        beat.queued(),
        beat.bytes(),
        beat.edges(),
        beat.merged(),
        beat.dropped(),
        beat.levels().map(Levels::blockedA),
        beat.levels().map(Levels::blockedB),
        beat.surroundings().lightA(),
        beat.surroundings().lightB(),
        beat.surroundings().supplyMv(),
        beat.surroundings().chipCentiC(),
        beat.surroundings().airCentiC(),
        beat.surroundings().humidityCentiPercent());
  }

  private boolean isKnown(long board, Heartbeat beat) {
    return BareSql.returning(
            handle,
            "SELECT EXISTS (SELECT 1 FROM heartbeat WHERE board_id = ? AND boot = ? AND ticks48 = ?)",
            board,
            beat.boot(),
            beat.ticks48())
        == 1;
  }

  /** Whether exactly this heartbeat is stored. */
  public boolean holds(long board, Heartbeat beat) {
    return handle
        .createQuery(
            """
            SELECT EXISTS (SELECT 1 FROM heartbeat
              WHERE board_id = ? AND boot = ? AND ticks48 = ? AND edges = ?)""")
        .bind(0, board)
        .bind(1, beat.boot())
        .bind(2, beat.ticks48())
        .bind(3, beat.edges())
        .mapTo(boolean.class)
        .one();
  }

  /** Heartbeats of one boot between two full tick counts, in order. */
  public List<StoredBeat> beats(long board, int boot, long fromTicks48, long toTicks48) {
    return handle
        .createQuery(
            """
            SELECT boot, listening_id, ticks48, received_us, queued, bytes FROM heartbeat
            WHERE board_id = ? AND boot = ? AND ticks48 BETWEEN ? AND ? ORDER BY ticks48""")
        .bind(0, board)
        .bind(1, boot)
        .bind(2, fromTicks48)
        .bind(3, toTicks48)
        .map(BEAT)
        .list();
  }

  public void missing(long board, Sentence.Missing missing) {
    handle
        .createUpdate(
            """
            INSERT INTO missing SELECT :board, :boot, :first, :last
            WHERE NOT EXISTS (SELECT 1 FROM missing
              WHERE board_id = :board AND boot = :boot AND first = :first AND last = :last)""")
        .bind("board", board)
        .bindMethods(missing)
        .execute();
  }

  public void loss(long board, Sentence.Loss loss) {
    handle
        .createUpdate(
            """
            INSERT INTO loss SELECT :board, :boot, :gateName, :firstTicks, :lastTicks, :count
            WHERE NOT EXISTS (SELECT 1 FROM loss
              WHERE board_id = :board AND boot = :boot AND gate = :gateName
                AND first_ticks = :firstTicks AND last_ticks = :lastTicks)""")
        .bind("board", board)
        .bind("gateName", loss.gate().name())
        .bindMethods(loss)
        .execute();
  }

  /**
   * What the board said of its stamps when it was last heard in that boot; where that line was
   * lost, in the boot nearest to it.
   */
  public Optional<Timing> timing(long board, int boot) {
    return handle
        .createQuery(
            """
            SELECT hz, latency_a_ns, latency_b_ns FROM identity
            WHERE board_id = ? ORDER BY abs(boot - ?), boot, listening_id DESC LIMIT 1""")
        .bind(0, board)
        .bind(1, boot)
        .map(ConstructorMapper.of(Timing.class))
        .findOne();
  }

  /** An edge with its full name and the shot it is part of. */
  public record ExportedEdge(
      String device,
      int series,
      int boot,
      int number,
      String gate,
      String kind,
      long ticks,
      int late,
      Optional<String> shotId,
      Optional<String> station) {}

  /** Hands on every edge, by board, boot and number. */
  public void each(Consumer<ExportedEdge> consumer) {
    try (var edges = exported("").stream()) {
      edges.forEach(consumer);
    }
  }

  /** Hands on every edge of one station's passages, by board, boot and number. */
  public void each(String station, Consumer<ExportedEdge> consumer) {
    try (var edges = exported("WHERE passage.station = ?", station).stream()) {
      edges.forEach(consumer);
    }
  }

  /** The edges of one passage. */
  public List<ExportedEdge> exported(long passageId) {
    return exported("WHERE passage.id = ?", passageId).list();
  }

  private ResultIterable<ExportedEdge> exported(String condition, Object... values) {
    return handle
        .select(
            """
            SELECT device, series, edge.boot, number, gate, kind, ticks, late, shot_id, passage.station
            FROM edge JOIN board ON board.id = edge.board_id
            LEFT JOIN passage ON passage.board_id = edge.board_id AND passage.boot = edge.boot
              AND first_edge <= number AND last_edge >= number AND part_of IS NULL
              AND (own_edges IS NULL OR number IN (SELECT value FROM json_each(own_edges)))
            %s ORDER BY device, series, edge.boot, number"""
                .formatted(condition),
            values)
        .map(ConstructorMapper.of(ExportedEdge.class));
  }

  /**
   * How a board stamps: its nominal tick rate, and how late each gate's stamps are by construction.
   */
  public record Timing(int hz, int latencyANs, int latencyBNs) {

    /** What is assumed of a board that never said so: the usual rate, and no delay. */
    public static final Timing UNTOLD = new Timing(2_000_000, 0, 0);

    /** The delay to subtract from each gate's stamps. */
    public StampLatency latency() {
      return new StampLatency(latencyANs * 1e-9, latencyBNs * 1e-9);
    }
  }
}
