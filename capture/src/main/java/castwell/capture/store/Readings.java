package castwell.capture.store;

import java.time.Instant;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;

/** Speeds that were read off another display, as somebody wrote them down. */
public final class Readings {
  private final Handle handle;

  /**
   * One speed that was read.
   *
   * @param speedMps empty where there was none
   * @param note a person's words, may be empty
   * @param source where it was written down
   */
  public record Reading(
      OptionalDouble speedMps, double uOwnMps, double uCommonMps, String note, String source) {}

  Readings(Handle handle) {
    this.handle = handle;
  }

  public void add(long passageId, Reading reading, Instant entered, String by) {
    handle
        .createUpdate(
            """
            INSERT INTO reading (passage_id, speed_mps, speed_u_own_mps, speed_u_common_mps, note, source,
              entered_ms, entered_by)
            VALUES (:passageId, :speedMps, :uOwnMps, :uCommonMps, :note, :source, :entered, :by)""")
        .bindMethods(reading)
        .bind("passageId", passageId)
        .bind("entered", entered)
        .bind("by", by)
        .execute();
  }
}
