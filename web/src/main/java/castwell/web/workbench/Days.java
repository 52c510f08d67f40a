package castwell.web.workbench;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Writes dates as people read them: ISO 8601, in the range's own time zone. */
final class Days {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  private static final int MINUTE_LENGTH = 16;

  private Days() {}

  static String of(Instant instant, ZoneId zone) {
    return instant.atZone(zone).toLocalDate().toString();
  }

  static String withMinute(Instant instant, ZoneId zone) {
    return instant.atZone(zone).format(MINUTE);
  }

  /** A state's name, which is a date or a minute of it. */
  static String ofState(String name) {
    return name.substring(0, Math.min(MINUTE_LENGTH, name.length())).replace('T', ' ');
  }

  static String time(Instant instant, ZoneId zone) {
    return instant.atZone(zone).format(TIME);
  }
}
