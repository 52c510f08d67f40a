package castwell.web.workbench;

import java.time.Instant;
import java.time.ZoneId;

/** Dates as they are read: ISO 8601, in the range's own time zone. */
final class Days {
  private Days() {}

  static String of(Instant instant, ZoneId zone) {
    return instant.atZone(zone).toLocalDate().toString();
  }
}
