package castwell.capture.store;

import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Every time an arrow was put on the scale. */
public final class Weighings {
  private final Handle handle;

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

  /** In kg, the first first. */
  public List<Double> of(long arrowId) {
    return handle
        .createQuery("SELECT mass_kg FROM weighing WHERE arrow_id = ? ORDER BY id")
        .bind(0, arrowId)
        .mapTo(Double.class)
        .list();
  }
}
