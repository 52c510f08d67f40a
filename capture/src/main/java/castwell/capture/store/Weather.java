package castwell.capture.store;

import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;

/** The air as the boards' sensors measured it. */
public final class Weather {
  private final Handle handle;

  /**
   * Means over a session, empty where no board had a sensor.
   *
   * @param relativeHumidity 0 to 1
   */
  public record Air(OptionalDouble celsius, OptionalDouble relativeHumidity) {}

  Weather(Handle handle) {
    this.handle = handle;
  }

  /** The air from five minutes before the session's first shot to five minutes after its last. */
  public Air ofSession(String session) {
    return handle
        .createQuery(
            """
            SELECT avg(air_centi_c) / 100 AS celsius, avg(humidity_centi_percent) / 10000 AS humidity
            FROM heartbeat
            JOIN listening ON listening.id = listening_id
            JOIN (SELECT listening_id AS heard, min(fired_ms) - 300000 AS first, max(fired_ms) + 300000 AS last
              FROM passage JOIN session ON session.id = session_id WHERE session.name = ? GROUP BY listening_id)
              ON heard = listening_id
            WHERE started_ms + received_us / 1000 BETWEEN first AND last""")
        .bind(0, session)
        .map(
            (row, context) ->
                new Air(Columns.optional(row, "celsius"), Columns.optional(row, "humidity")))
        .one();
  }
}
