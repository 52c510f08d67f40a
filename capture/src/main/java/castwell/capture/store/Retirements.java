package castwell.capture.store;

import java.time.Instant;
import java.util.Set;
import org.jdbi.v3.core.Handle;

/** Which bows and arrows are out of use. Nothing is deleted, and each can be taken up again. */
public final class Retirements {
  private final Handle handle;

  Retirements(Handle handle) {
    this.handle = handle;
  }

  public void bow(long bowId, boolean retired, Instant at, String by) {
    say("bow_id", bowId, retired, at, by);
  }

  public void arrow(long arrowId, boolean retired, Instant at, String by) {
    say("arrow_id", arrowId, retired, at, by);
  }

  private void say(String column, long id, boolean retired, Instant at, String by) {
    handle
        .createUpdate(
            "INSERT INTO retiring (" + column + ", retired, at_ms, said_by) VALUES (?, ?, ?, ?)")
        .bind(0, id)
        .bind(1, retired)
        .bind(2, at)
        .bind(3, by)
        .execute();
  }

  /** The row numbers of the bows that are out of use. */
  public Set<Long> bows() {
    return retired("bow_id");
  }

  public Set<Long> arrows() {
    return retired("arrow_id");
  }

  private Set<Long> retired(String column) {
    return handle
        .createQuery(
            """
            SELECT %1$s FROM retiring WHERE retired AND id IN
              (SELECT max(id) FROM retiring WHERE %1$s IS NOT NULL GROUP BY %1$s)"""
                .formatted(column))
        .mapTo(Long.class)
        .set();
  }
}
