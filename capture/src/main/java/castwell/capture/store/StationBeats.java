package castwell.capture.store;

import castwell.capture.store.RawFacts.StoredBeat;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Levels;
import castwell.capture.wire.Sentence.Surroundings;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;

/** The heartbeats of a station's boards, now and earlier. */
public final class StationBeats {
  private static final int MOST_BOOTS = 100;

  private static final String COLUMNS =
      "started_ms, received_us, boot, heartbeat.ticks48, queued, edges, merged, dropped, blocked_a, blocked_b,"
          + " light_a, light_b, supply_mv, chip_centi_c, air_centi_c, humidity_centi_percent, bytes";

  private static final RowMapper<HeardBeat> BEAT = (row, context) -> beat(row);

  private static final RowMapper<StoredBeat> STAMP = ConstructorMapper.of(StoredBeat.class);

  private final Handle handle;

  /**
   * A board's run from one start to the next.
   *
   * @param hz its nominal tick rate
   */
  public record Run(long boardId, int boot, String device, int hz) {}

  StationBeats(Handle handle) {
    this.handle = handle;
  }

  /** The runs heard at a station, the last heard first, as far as the boards said who they were. */
  public List<Run> runs(String station) {
    return handle
        .createQuery(
            """
            SELECT board_id, boot, device, hz FROM identity
            JOIN listening ON listening.id = listening_id JOIN board ON board.id = board_id
            WHERE station = ? GROUP BY board_id, boot
            ORDER BY max(started_ms + received_us / 1000) DESC LIMIT ?""")
        .bind(0, station)
        .bind(1, MOST_BOOTS)
        .map(ConstructorMapper.of(Run.class))
        .list();
  }

  /** The newest beats of a run, ascending. */
  public List<HeardBeat> newest(Run run, int most) {
    List<HeardBeat> beats =
        handle
            .createQuery(
                "SELECT "
                    + COLUMNS
                    + """
                       FROM heartbeat JOIN listening ON listening.id = listening_id
                      WHERE board_id = :boardId AND boot = :boot ORDER BY ticks48 DESC LIMIT :most""")
            .bindMethods(run)
            .bind("most", most)
            .map(BEAT)
            .collectIntoList();
    Collections.reverse(beats);
    return beats;
  }

  /** Heartbeats of a station, the newest first, at least that far apart by the board's clock. */
  public List<HeardBeat> sampled(String station, Duration apart, int most) {
    List<HeardBeat> beats = new ArrayList<>();
    for (Run run : runs(station)) {
      beats.addAll(sampled(run, apart, most - beats.size()));
      if (beats.size() >= most) {
        break;
      }
    }
    return beats;
  }

  private List<HeardBeat> sampled(Run run, Duration apart, int most) {
    return sampled(run, apart, most, COLUMNS, BEAT);
  }

  /**
   * The heartbeats from which a run's tick rate can be measured, the newest first, at least that
   * far apart.
   */
  public List<StoredBeat> stamps(Run run, Duration apart, int most) {
    return sampled(
        run,
        apart,
        most,
        "boot, listening_id, heartbeat.ticks48, received_us, queued, bytes",
        STAMP);
  }

  /**
   * Steps from one sample to the next by the primary key, so that the beats between, a hundred
   * times as many, aren't read. CROSS keeps SQLite from joining in another order (its "Query
   * Optimizer Overview").
   */
  private <T> List<T> sampled(
      Run run, Duration apart, int most, String columns, RowMapper<T> mapper) {
    return handle
        .createQuery(
            """
            WITH RECURSIVE sample (ticks48) AS (
              SELECT max(ticks48) FROM heartbeat WHERE board_id = :boardId AND boot = :boot
              UNION ALL
              SELECT (SELECT max(ticks48) FROM heartbeat
                WHERE board_id = :boardId AND boot = :boot AND ticks48 <= sample.ticks48 - :step)
              FROM sample WHERE ticks48 IS NOT NULL
              LIMIT :most)
            SELECT %s FROM sample
            CROSS JOIN heartbeat ON board_id = :boardId AND boot = :boot AND heartbeat.ticks48 = sample.ticks48
            CROSS JOIN listening ON listening.id = listening_id
            ORDER BY sample.ticks48 DESC"""
                .formatted(columns))
        .bindMethods(run)
        .bind("step", Math.round(apart.toMillis() / 1e3 * run.hz()))
        .bind("most", most)
        .map(mapper)
        .list();
  }

  private static HeardBeat beat(ResultSet row) throws SQLException {
    Instant at =
        Instant.ofEpochMilli(row.getLong("started_ms"))
            .plus(row.getLong("received_us"), ChronoUnit.MICROS);
    return new HeardBeat(
        at,
        new Heartbeat(
            0,
            row.getInt("boot"),
            row.getLong("ticks48"),
            row.getInt("queued"),
            row.getInt("edges"),
            row.getInt("merged"),
            row.getInt("dropped"),
            levels(row),
            new Surroundings(
                Columns.optionalInt(row, "light_a"),
                Columns.optionalInt(row, "light_b"),
                Columns.optionalInt(row, "supply_mv"),
                Columns.optionalInt(row, "chip_centi_c"),
                Columns.optionalInt(row, "air_centi_c"),
                Columns.optionalInt(row, "humidity_centi_percent")),
            row.getInt("bytes")));
  }

  private static Optional<Levels> levels(ResultSet row) throws SQLException {
    OptionalInt a = Columns.optionalInt(row, "blocked_a");
    OptionalInt b = Columns.optionalInt(row, "blocked_b");
    return a.isPresent() && b.isPresent()
        ? Optional.of(new Levels(a.getAsInt() != 0, b.getAsInt() != 0))
        : Optional.empty();
  }
}
