package castwell.capture.word;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;

/**
 * A day, or an instant of it, as people and programs write them (ISO 8601).
 *
 * @param day in the range's time zone
 * @param instant empty where only the day is known
 */
public record When(LocalDate day, Optional<Instant> instant) {
  private static final int EARLIEST = 1900;
  private static final int LATEST = 2199;

  /**
   * @param zone the time zone of a text that names none
   */
  public static Optional<When> parse(String text, ZoneId zone) {
    String plain = text.replaceFirst("(?<=\\d) +(?=\\d)", "T");
    return tried(() -> new When(LocalDate.parse(plain), Optional.empty()))
        .or(() -> tried(() -> at(LocalDateTime.parse(plain).atZone(zone).toInstant(), zone)))
        .or(() -> tried(() -> at(OffsetDateTime.parse(plain).toInstant(), zone)))
        .filter(when -> when.day().getYear() >= EARLIEST && when.day().getYear() <= LATEST);
  }

  /** The instant; the first one of the day where only the day is known. */
  public Instant begin(ZoneId zone) {
    return instant.orElseGet(() -> day.atStartOfDay(zone).toInstant());
  }

  private static When at(Instant instant, ZoneId zone) {
    return new When(LocalDate.ofInstant(instant, zone), Optional.of(instant));
  }

  private interface Parsing {
    When parse();
  }

  private static Optional<When> tried(Parsing parsing) {
    try {
      return Optional.of(parsing.parse());
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
