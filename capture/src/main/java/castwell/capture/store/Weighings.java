package castwell.capture.store;

import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;

/** Every time an arrow was put on the scale, and which of these weighings don't count. */
public final class Weighings {
  private static final RowMapper<Weighing> ROW = ConstructorMapper.of(Weighing.class);

  private final Handle handle;

  /**
   * One weighing of an arrow.
   *
   * @param why why it was set aside; "" where it counts or nobody said
   */
  public record Weighing(long id, double massKg, Instant atMs, boolean setAside, String why) {
    public boolean counts() {
      return !setAside;
    }
  }

  Weighings(Handle handle) {
    this.handle = handle;
  }

  public void add(long arrowId, double massKg, Instant at, String by) {
    handle
        .createUpdate(
            "INSERT INTO weighing (arrow_id, mass_kg, at_ms, said_by) VALUES (?, ?, ?, ?)")
        .bind(0, arrowId)
        .bind(1, massKg)
        .bind(2, at)
        .bind(3, by)
        .execute();
  }

  /** Sets a weighing aside, or brings it back. */
  public void decide(long weighingId, boolean setAside, String why, Instant at, String by) {
    handle
        .createUpdate(
            "INSERT INTO weighing_decision (weighing_id, set_aside, why, at_ms, said_by) VALUES (?, ?, ?, ?, ?)")
        .bind(0, weighingId)
        .bind(1, setAside)
        .bind(2, why)
        .bind(3, at)
        .bind(4, by)
        .execute();
  }

  /** All weighings of an arrow, the first first. */
  public List<Weighing> of(long arrowId) {
    return handle
        .createQuery(
            """
            SELECT weighing.id, mass_kg, weighing.at_ms, coalesce(set_aside, 0) AS set_aside,
              CASE WHEN set_aside = 1 THEN why ELSE '' END AS why
            FROM weighing LEFT JOIN weighing_decision ON weighing_decision.id =
              (SELECT max(id) FROM weighing_decision WHERE weighing_id = weighing.id)
            WHERE arrow_id = ? ORDER BY weighing.id""")
        .bind(0, arrowId)
        .map(ROW)
        .list();
  }

  /** The masses in kg of the weighings that count. */
  public static double[] massesKg(List<Weighing> weighings) {
    return weighings.stream().filter(Weighing::counts).mapToDouble(Weighing::massKg).toArray();
  }
}
