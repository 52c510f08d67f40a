package castwell.capture.store;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Outings, and the ends within them. A shot that counts begins one by itself. */
public final class Sessions {
  static final Duration NEW_END_AFTER = Duration.ofMinutes(3);
  static final Duration NEW_SESSION_AFTER = Duration.ofHours(3);

  /**
   * How far out of order passages may close: one that was fired earlier may close later than
   * another.
   */
  private static final Duration OUT_OF_ORDER = Duration.ofMinutes(1);

  private static final String BY_A_SHOT = "a shot";

  private static final RowMapper<Session> SESSION =
      (row, context) ->
          new Session(
              row.getLong("id"),
              row.getString("station"),
              row.getString("name"),
              Instant.ofEpochMilli(row.getLong("started_ms")));

  private static final RowMapper<LastShot> LAST_SHOT =
      (row, context) ->
          new LastShot(Instant.ofEpochMilli(row.getLong("fired_ms")), row.getInt("end_number"));

  private final Handle handle;

  public record Session(long id, String station, String name, Instant startedMs) {}

  /** The session and the end that a passage belongs to. */
  public record Place(long sessionId, int endNumber) {}

  /** A session's last shot that counts by the rules alone. */
  private record LastShot(Instant firedMs, int endNumber) {}

  Sessions(Handle handle) {
    this.handle = handle;
  }

  /**
   * The session and end of a passage. One that doesn't count joins what there is, so that a passing
   * insect never begins an end.
   *
   * @param clean whether the rules let it count
   * @param date what a session begun now would be called
   */
  public Place place(String station, Instant fired, boolean clean, String date) {
    Optional<Session> current = at(station, fired);
    Optional<LastShot> last = current.flatMap(session -> lastShot(session.id(), fired));
    Instant quietSince = current.map(session -> quietSince(session, last)).orElse(Instant.MIN);
    boolean over = clean && fired.isAfter(plus(quietSince, NEW_SESSION_AFTER));
    if (current.isEmpty() || over) {
      long begun =
          begunSoonAfter(station, fired)
              .map(Session::id)
              .orElseGet(() -> begin(station, fired, date, BY_A_SHOT));
      return new Place(begun, 1);
    }
    int end = last.map(LastShot::endNumber).orElse(1);
    boolean newEnd = clean && last.isPresent() && fired.isAfter(plus(quietSince, NEW_END_AFTER));
    return new Place(current.get().id(), newEnd ? end + 1 : end);
  }

  /** The session that a shot fired then would join; empty where it would begin one. */
  public Optional<Long> goingOn(String station, Instant fired) {
    return at(station, fired)
        .filter(
            session -> {
              Instant since = quietSince(session, lastShot(session.id(), fired));
              return !fired.isAfter(plus(since, NEW_SESSION_AFTER));
            })
        .map(Session::id);
  }

  private static Instant quietSince(Session session, Optional<LastShot> last) {
    return last.map(LastShot::firedMs).orElse(session.startedMs());
  }

  private Optional<Session> begunSoonAfter(String station, Instant fired) {
    return handle
        .createQuery(
            """
            SELECT id, station, name, started_ms FROM session
            WHERE station = ? AND begun_by = ? AND started_ms > ? AND started_ms <= ?
            ORDER BY started_ms LIMIT 1""")
        .bind(0, station)
        .bind(1, BY_A_SHOT)
        .bind(2, fired)
        .bind(3, fired.plus(OUT_OF_ORDER))
        .map(SESSION)
        .findOne();
  }

  private static Instant plus(Instant instant, Duration duration) {
    return instant.equals(Instant.MIN) ? instant : instant.plus(duration);
  }

  public long begin(String station, Instant started, String date, String by) {
    return BareSql.returning(
        handle,
        "INSERT INTO session (station, name, started_ms, begun_by) VALUES (?, ?, ?, ?) RETURNING id",
        station,
        freeName(date),
        started,
        by);
  }

  private String freeName(String date) {
    List<String> taken =
        handle
            .createQuery("SELECT name FROM session WHERE name = ? OR name LIKE ? || '-%'")
            .bind(0, date)
            .bind(1, date)
            .mapTo(String.class)
            .list();
    String name = date;
    for (int i = 2; taken.contains(name); i++) {
      name = date + "-" + i;
    }
    return name;
  }

  /** The session that an instant falls into: the last one begun by then. */
  public Optional<Session> at(String station, Instant at) {
    return BareSql.first(
        handle,
        SESSION,
        """
        SELECT id, station, name, started_ms FROM session WHERE station = ? AND started_ms <= ?
        ORDER BY started_ms DESC, id DESC LIMIT 1""",
        station,
        at);
  }

  /** The latest date of anything that was captured at a station. */
  public Optional<Instant> lastDated(String station) {
    return handle
        .createQuery(
            """
            SELECT max(ms) AS ms FROM (
              SELECT max(at_ms) AS ms FROM tag_change WHERE station = :station
              UNION ALL SELECT max(started_ms) FROM session WHERE station = :station
              UNION ALL SELECT max(fired_ms) FROM passage WHERE station = :station AND board_id IS NOT NULL)""")
        .bind("station", station)
        .map((row, context) -> Columns.optionalLong(row, "ms"))
        .one()
        .stream()
        .mapToObj(Instant::ofEpochMilli)
        .findFirst();
  }

  public Optional<Session> byId(long id) {
    return handle
        .createQuery("SELECT id, station, name, started_ms FROM session WHERE id = ?")
        .bind(0, id)
        .map(SESSION)
        .findOne();
  }

  public Optional<Session> byName(String name) {
    return handle
        .createQuery("SELECT id, station, name, started_ms FROM session WHERE name = ?")
        .bind(0, name)
        .map(SESSION)
        .findOne();
  }

  /** All sessions, the last begun first. */
  public List<Session> all() {
    return handle
        .createQuery(
            "SELECT id, station, name, started_ms FROM session ORDER BY started_ms DESC, id DESC")
        .map(SESSION)
        .list();
  }

  /** A session as a list of sessions shows it. */
  public record Listed(
      long id,
      String station,
      String name,
      Instant startedMs,
      int passages,
      int counting,
      List<String> bows,
      Optional<String> note) {}

  /**
   * A part of the list of sessions, the last begun first.
   *
   * @param after how many are left out before
   */
  public List<Listed> some(int after, int most) {
    Shots shots = new Shots(handle);
    SessionNotes notes = new SessionNotes(handle);
    return handle
        .createQuery(
            """
            SELECT id, station, name, started_ms FROM session ORDER BY started_ms DESC, id DESC
            LIMIT ? OFFSET ?""")
        .bind(0, most)
        .bind(1, after)
        .map(SESSION)
        .list()
        .stream()
        .map(
            session -> {
              Shots.Tally tally = shots.tally(session.id());
              return new Listed(
                  session.id(),
                  session.station(),
                  session.name(),
                  session.startedMs(),
                  tally.passages(),
                  tally.counting(),
                  bows(session.id()),
                  notes.of(session.id()));
            })
        .toList();
  }

  private List<String> bows(long sessionId) {
    return handle
        .createQuery(
            """
            SELECT DISTINCT bow.name FROM passage
            JOIN shot_tag ON shot_tag.id = (SELECT max(id) FROM shot_tag WHERE passage_id = passage.id)
            JOIN bow ON bow.id = shot_tag.bow_id
            WHERE session_id = ? AND part_of IS NULL ORDER BY bow.id""")
        .bind(0, sessionId)
        .mapTo(String.class)
        .list();
  }

  /** The sessions in which a bow was shot, by the tags in force, the first first. */
  public List<String> ofBow(long bowId) {
    return handle
        .createQuery(
            """
            SELECT session.name FROM shot_tag JOIN passage ON passage.id = passage_id
            JOIN session ON session.id = session_id
            WHERE bow_id = ? AND part_of IS NULL
              AND shot_tag.id = (SELECT max(id) FROM shot_tag AS last WHERE last.passage_id = passage.id)
            GROUP BY session.id ORDER BY min(fired_ms), session.id""")
        .bind(0, bowId)
        .mapTo(String.class)
        .list();
  }

  /** How far from the bow the middle between its gates stood, on average over its shots. */
  public OptionalDouble gatesFromBowM(String name) {
    return handle
        .createQuery(
            """
            SELECT avg(gates_from_bow_m + spacing_m / 2) AS middle_m FROM passage
            JOIN session ON session.id = session_id JOIN calibration ON calibration.id = calibration_id
            WHERE session.name = ? AND part_of IS NULL""")
        .bind(0, name)
        .map((row, context) -> Columns.optional(row, "middle_m"))
        .one();
  }

  /** The sessions of that name, and those begun within a time. */
  public List<Session> named(String name, Instant from, Instant to) {
    return handle
        .createQuery(
            """
            SELECT id, station, name, started_ms FROM session
            WHERE name = ? OR started_ms >= ? AND started_ms < ? ORDER BY started_ms, id""")
        .bind(0, name)
        .bind(1, from)
        .bind(2, to)
        .map(SESSION)
        .list();
  }

  /** The next session that was begun at the same station; empty for the last. */
  public Optional<Session> next(Session session) {
    return handle
        .createQuery(
            """
            SELECT id, station, name, started_ms FROM session WHERE station = ? AND started_ms > ?
            ORDER BY started_ms, id LIMIT 1""")
        .bind(0, session.station())
        .bind(1, session.startedMs())
        .map(SESSION)
        .findOne();
  }

  /** The names of all stations that ever had a shot. */
  public List<String> stations() {
    return handle
        .createQuery("SELECT DISTINCT station FROM session ORDER BY station")
        .mapTo(String.class)
        .list();
  }

  private Optional<LastShot> lastShot(long sessionId, Instant by) {
    return BareSql.first(
        handle,
        LAST_SHOT,
        """
        SELECT fired_ms, end_number FROM passage
        JOIN figure ON passage_id = passage.id AND figure.calibration_id = passage.calibration_id
        WHERE session_id = ? AND fired_ms <= ? AND clean AND part_of IS NULL
        ORDER BY fired_ms DESC, passage.id DESC LIMIT 1""",
        sessionId,
        by);
  }
}
