package castwell.capture.store;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;

/**
 * A summary of what a database holds, by which a copy is compared with its original.
 *
 * @param first when the first shot was fired
 */
public record Holding(
    long passages, long edges, long heartbeats, Optional<Instant> first, Optional<Instant> last) {

  static Holding of(Handle handle) {
    return handle
        .createQuery(
            """
            SELECT (SELECT count(*) FROM edge) AS edges, (SELECT count(*) FROM heartbeat) AS beats,
              count(*) AS passages, min(fired_ms) AS first, max(fired_ms) AS last FROM passage""")
        .map(
            (row, context) ->
                new Holding(
                    row.getLong("passages"),
                    row.getLong("edges"),
                    row.getLong("beats"),
                    instant(Columns.optionalLong(row, "first")),
                    instant(Columns.optionalLong(row, "last"))))
        .one();
  }

  private static Optional<Instant> instant(OptionalLong millis) {
    return millis.stream().mapToObj(Instant::ofEpochMilli).findFirst();
  }
}
