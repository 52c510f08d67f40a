package castwell.capture.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Plans: which arrow is to be shot from which bow in which order, and what became of each turn. */
public final class Plans {
  private static final RowMapper<Plan> PLAN =
      (row, context) ->
          new Plan(
              row.getLong("id"),
              row.getString("station"),
              row.getString("name"),
              Instant.ofEpochMilli(row.getLong("made_ms")),
              row.getString("made_by"));

  private final Handle handle;

  public record Plan(long id, String station, String name, Instant made, String by) {}

  /** One arrow from one bow; a plan's turns are numbered from 1. */
  public record Turn(int number, Rack.Named bow, Rack.Named arrow) {
    public Tags.Pair tags() {
      return new Tags.Pair(OptionalLong.of(bow.id()), OptionalLong.of(arrow.id()));
    }
  }

  public enum Happened {
    START,
    /** A shot counted. */
    SHOT,
    SKIP,
    REPEAT,
    BACK,
    PAUSE,
    /** Somebody set other tags, which pauses the plan until it is resumed. */
    TAGS_CHANGED,
    RESUME,
    END
  }

  /**
   * Something that happened to a plan.
   *
   * @param turn the turn that was shot or skipped; after any other event, the turn that is next
   * @param passageId the passage of the shot, if it is one
   */
  public record Event(Happened happened, int turn, OptionalLong passageId, Instant at, String by) {}

  Plans(Handle handle) {
    this.handle = handle;
  }

  /**
   * Stores a plan.
   *
   * @param turns in the order to be shot
   * @return the id
   */
  public long add(String station, String name, List<Tags.Pair> turns, Instant made, String by) {
    long id =
        BareSql.returning(
            handle,
            "INSERT INTO plan (station, name, made_ms, made_by) VALUES (?, ?, ?, ?) RETURNING id",
            station,
            name,
            made,
            by);
    for (int i = 0; i < turns.size(); i++) {
      handle
          .createUpdate(
              "INSERT INTO plan_turn (plan_id, number, bow_id, arrow_id) VALUES (?, ?, ?, ?)")
          .bind(0, id)
          .bind(1, i + 1)
          .bind(2, turns.get(i).bowId())
          .bind(3, turns.get(i).arrowId())
          .execute();
    }
    return id;
  }

  public void happened(long planId, Event event) {
    handle
        .createUpdate(
            """
            INSERT INTO plan_event (plan_id, kind, turn, passage_id, at_ms, said_by)
            VALUES (?, ?, ?, ?, ?, ?)""")
        .bind(0, planId)
        .bind(1, event.happened().name())
        .bind(2, event.turn())
        .bind(3, event.passageId())
        .bind(4, event.at())
        .bind(5, event.by())
        .execute();
  }

  public Optional<Plan> byId(long id) {
    return handle.createQuery("SELECT * FROM plan WHERE id = ?").bind(0, id).map(PLAN).findOne();
  }

  /** The plan with the latest event: no other can be under way at that station. */
  public Optional<Plan> current(String station) {
    return BareSql.first(
        handle,
        PLAN,
        """
        SELECT plan.* FROM plan JOIN plan_event ON plan_id = plan.id WHERE station = ?
        ORDER BY plan_event.id DESC LIMIT 1""",
        station);
  }

  /** A station's plans, the last made first. */
  public List<Plan> ofStation(String station) {
    return handle
        .createQuery("SELECT * FROM plan WHERE station = ? ORDER BY id DESC")
        .bind(0, station)
        .map(PLAN)
        .list();
  }

  public List<Turn> turns(long planId) {
    return handle
        .createQuery(
            """
            SELECT number, bow.id AS bow_id, bow.name AS bow, arrow.id AS arrow_id, arrow.name AS arrow
            FROM plan_turn JOIN bow ON bow.id = bow_id JOIN arrow ON arrow.id = arrow_id
            WHERE plan_id = ? ORDER BY number""")
        .bind(0, planId)
        .map(
            (row, context) ->
                new Turn(
                    row.getInt("number"),
                    new Rack.Named(row.getLong("bow_id"), row.getString("bow")),
                    new Rack.Named(row.getLong("arrow_id"), row.getString("arrow"))))
        .list();
  }

  /** A plan's events, the first first. */
  public List<Event> events(long planId) {
    return handle
        .createQuery("SELECT * FROM plan_event WHERE plan_id = ? ORDER BY id")
        .bind(0, planId)
        .map(
            (row, context) ->
                new Event(
                    Happened.valueOf(row.getString("kind")),
                    row.getInt("turn"),
                    Columns.optionalLong(row, "passage_id"),
                    Instant.ofEpochMilli(row.getLong("at_ms")),
                    row.getString("said_by")))
        .list();
  }

  /**
   * The turns whose shots have since all been set aside or tagged otherwise: somebody may want to
   * shoot them once more.
   */
  public List<Integer> doubted(long planId) {
    return handle
        .createQuery(
            """
            SELECT number FROM plan_turn
            JOIN plan_event ON plan_event.plan_id = plan_turn.plan_id AND turn = number AND kind = 'SHOT'
            JOIN passage ON passage.id = plan_event.passage_id
            LEFT JOIN figure ON figure.passage_id = passage.id AND figure.calibration_id = passage.calibration_id
            LEFT JOIN decision ON decision.id = (SELECT max(id) FROM decision WHERE passage_id = passage.id)
            LEFT JOIN shot_tag ON shot_tag.id = (SELECT max(id) FROM shot_tag WHERE passage_id = passage.id)
            WHERE plan_turn.plan_id = ? GROUP BY number
            HAVING NOT max(part_of IS NULL AND shot_tag.bow_id IS plan_turn.bow_id
              AND shot_tag.arrow_id IS plan_turn.arrow_id
              AND CASE decided WHEN 'SET_ASIDE' THEN 0 WHEN 'BROUGHT_BACK' THEN 1 ELSE coalesce(clean, 0) END)
            ORDER BY number""")
        .bind(0, planId)
        .mapTo(Integer.class)
        .list();
  }
}
