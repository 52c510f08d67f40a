package castwell.web.http;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;

/** Dates and times as people and programs write them. */
final class Dates {
  private static final Instant EARLIEST = Instant.parse("1900-01-01T00:00:00Z");
  private static final Instant LATEST = Instant.parse("2200-01-01T00:00:00Z");

  private Dates() {}

  /**
   * A day, a minute of it in a time zone, or an instant (RFC 3339).
   *
   * @param field it stands in
   */
  static Instant instant(String field, String text, ZoneId zone) {
    return tried(() -> Instant.parse(text))
        .or(() -> tried(() -> LocalDate.parse(text).atStartOfDay(zone).toInstant()))
        .or(() -> tried(() -> LocalDateTime.parse(text).atZone(zone).toInstant()))
        .filter(instant -> instant.isAfter(EARLIEST) && instant.isBefore(LATEST))
        .orElseThrow(
            () ->
                Body.invalid(
                    "The field \"%s\" is a date such as 2026-04-01, or 2026-04-01T14:30."
                        .formatted(field)));
  }

  private interface Parsing {
    Instant parse();
  }

  private static Optional<Instant> tried(Parsing parsing) {
    try {
      return Optional.of(parsing.parse());
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
