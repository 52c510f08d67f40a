package castwell.capture.store;

import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** What happened, in order: written with what it tells of, read by whoever listens. */
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
    /** Who shoots what. */
    TAGS,
    /** Bows or arrows. */
    RACK,
    /** What is to be shot next by a plan. */
    PLAN,
    /** Many things at once: read everything anew. */
    REFRESH;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * @param passageId of the shot it is about, if it is about one
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

  /** 0 when nothing has happened yet. */
  public long last() {
    return handle.createQuery("SELECT coalesce(max(id), 0) FROM feed").mapTo(long.class).one();
  }

  /** Ascending. */
  public List<Item> after(long id, int limit) {
    return handle
        .createQuery(
            "SELECT id, kind, station, passage_id FROM feed WHERE id > ? ORDER BY id LIMIT ?")
        .bind(0, id)
        .bind(1, limit)
        .map(ITEM)
        .list();
  }

  /** One station's, and what concerns all; ascending. */
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

  /** How many {@link #after(long, String, int)} would give without a limit. */
  public long countAfter(long id, String station) {
    return handle
        .createQuery("SELECT count(*) FROM feed WHERE id > ? AND station IN (?, '')")
        .bind(0, id)
        .bind(1, station)
        .mapTo(long.class)
        .one();
  }

  /** The last item that a reader who may miss nothing has passed on, once it has one. */
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
