package castwell.capture.store;

import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/**
 * What happened, in order. Each item is written in the same transaction as what it tells of, and
 * read by whoever listens.
 */
public final class Feed {
  private static final RowMapper<Item> ITEM =
      (row, context) ->
          new Item(
              row.getLong("id"),
              Kind.valueOf(row.getString("kind")),
              row.getString("station"),
              Columns.optionalLong(row, "passage_id"));

  private final Handle handle;

  public enum Kind {
    /** A shot is new, or something about it changed. */
    SHOT,
    /** Other tags hold: who shoots which bow and arrow. */
    TAGS,
    /** A bow or an arrow changed. */
    RACK,
    /** The next turn of a plan changed. */
    PLAN,
    /** Many things changed at once: a listener reads everything anew. */
    REFRESH;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * One thing that happened.
   *
   * @param passageId the passage of the shot it is about, if it is about one
   */
  public record Item(long id, Kind kind, String station, OptionalLong passageId) {}

  Feed(Handle handle) {
    this.handle = handle;
  }

  public void add(Kind kind, String station, OptionalLong passageId) {
    BareSql.write(
        handle,
        "INSERT INTO feed (kind, station, passage_id) VALUES (?, ?, ?)",
        kind.name(),
        station,
        passageId);
  }

  public void shot(String station, long passageId) {
    add(Kind.SHOT, station, OptionalLong.of(passageId));
  }

  /** The id of the last item, 0 when nothing has happened yet. */
  public long last() {
    return handle.createQuery("SELECT coalesce(max(id), 0) FROM feed").mapTo(long.class).one();
  }

  /** The items after one, ascending. */
  public List<Item> after(long id, int limit) {
    return handle
        .createQuery(
            "SELECT id, kind, station, passage_id FROM feed WHERE id > ? ORDER BY id LIMIT ?")
        .bind(0, id)
        .bind(1, limit)
        .map(ITEM)
        .list();
  }

  /** The items after one that concern this station or all stations, ascending. */
  public List<Item> after(long id, String station, int limit) {
    return handle
        .createQuery(
            """
            SELECT id, kind, station, passage_id FROM feed
            WHERE id > ? AND station IN (?, '') ORDER BY id LIMIT ?""")
        .bind(0, id)
        .bind(1, station)
        .bind(2, limit)
        .map(ITEM)
        .list();
  }

  /** How many items {@link #after(long, String, int)} would give without a limit. */
  public long countAfter(long id, String station) {
    return handle
        .createQuery("SELECT count(*) FROM feed WHERE id > ? AND station IN (?, '')")
        .bind(0, id)
        .bind(1, station)
        .mapTo(long.class)
        .one();
  }

  /**
   * The last item that this reader has passed on; empty before its first. It is for readers who may
   * miss nothing.
   */
  public OptionalLong place(String reader) {
    return handle
        .createQuery("SELECT last FROM feed_place WHERE reader = ?")
        .bind(0, reader)
        .mapTo(long.class)
        .findOne()
        .map(OptionalLong::of)
        .orElse(OptionalLong.empty());
  }

  public void moveTo(String reader, long last) {
    handle
        .createUpdate(
            """
            INSERT INTO feed_place (reader, last) VALUES (?, ?)
            ON CONFLICT (reader) DO UPDATE SET last = excluded.last""")
        .bind(0, reader)
        .bind(1, last)
        .execute();
  }
}
