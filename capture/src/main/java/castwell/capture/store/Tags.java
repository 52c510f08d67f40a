package castwell.capture.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/**
 * The tags, which say who shoots what: those that hold at a station from an instant on, and those
 * of each shot.
 */
public final class Tags {
  private static final RowMapper<Pair> PAIR =
      (row, context) ->
          new Pair(Columns.optionalLong(row, "bow_id"), Columns.optionalLong(row, "arrow_id"));

  private final Handle handle;

  /** Row numbers of a bow and an arrow, each empty where it isn't known. */
  public record Pair(OptionalLong bowId, OptionalLong arrowId) {
    public static final Pair NOT_KNOWN = new Pair(OptionalLong.empty(), OptionalLong.empty());
  }

  Tags(Handle handle) {
    this.handle = handle;
  }

  public void change(String station, Instant at, Pair tags, String by) {
    handle
        .createUpdate(
            """
            INSERT INTO tag_change (station, at_ms, bow_id, arrow_id, changed_by)
            VALUES (?, ?, ?, ?, ?)""")
        .bind(0, station)
        .bind(1, at)
        .bind(2, tags.bowId())
        .bind(3, tags.arrowId())
        .bind(4, by)
        .execute();
  }

  /** The tags that held at a station at an instant. */
  public Pair at(String station, Instant at) {
    return BareSql.first(
            handle,
            PAIR,
            """
            SELECT bow_id, arrow_id FROM tag_change WHERE station = ? AND at_ms <= ?
            ORDER BY at_ms DESC, id DESC LIMIT 1""",
            station,
            at)
        .orElse(Pair.NOT_KNOWN);
  }

  public void tagShot(long passageId, Pair tags, Instant at, String by, String why) {
    BareSql.write(
        handle,
        """
        INSERT INTO shot_tag (passage_id, bow_id, arrow_id, at_ms, tagged_by, why)
        VALUES (?, ?, ?, ?, ?, ?)""",
        passageId,
        tags.bowId(),
        tags.arrowId(),
        at,
        by,
        why);
  }

  /** The tags in force of a shot; empty if it was never tagged. */
  public Optional<Pair> ofShot(long passageId) {
    return BareSql.first(
        handle,
        PAIR,
        """
        SELECT bow_id, arrow_id FROM shot_tag WHERE passage_id = ?
        ORDER BY id DESC LIMIT 1""",
        passageId);
  }

  /** One tagging of a shot, with names instead of row numbers. */
  public record Tagging(
      Optional<String> bow, Optional<String> arrow, Instant at, String taggedBy, String why) {}

  /** All taggings of a shot, the first first. */
  public List<Tagging> history(long passageId) {
    return handle
        .createQuery(
            """
            SELECT bow.name AS bow, arrow.name AS arrow, at_ms, tagged_by, why FROM shot_tag
            LEFT JOIN bow ON bow.id = bow_id LEFT JOIN arrow ON arrow.id = arrow_id
            WHERE passage_id = ? ORDER BY shot_tag.id""")
        .bind(0, passageId)
        .map(
            (row, context) ->
                new Tagging(
                    Columns.optionalText(row, "bow"),
                    Columns.optionalText(row, "arrow"),
                    Instant.ofEpochMilli(row.getLong("at_ms")),
                    row.getString("tagged_by"),
                    row.getString("why")))
        .list();
  }
}
