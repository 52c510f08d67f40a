package castwell.capture.intake;

import castwell.capture.word.When;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Dates each shot of a sheet: by what its line says, or else so that the order of the lines is
 * kept.
 */
final class Firing {
  /**
   * The name of a session that is called after its day; the second one of that day ends in -2, and
   * so on.
   */
  private static final Pattern DAY_OF_SESSION = Pattern.compile("(\\d{4}-\\d\\d-\\d\\d)(-\\d+)?");

  private static final int NOON = 12;

  private final Instant now;
  private final ZoneId zone;
  private final Map<LocalDate, Integer> ofDay = new HashMap<>();
  private int undated;

  Firing(Instant now, ZoneId zone) {
    this.now = now;
    this.zone = zone;
  }

  /**
   * The instant that the line gives. For a day alone it is noon, and a second later with each line;
   * a bow state of that day has begun by then. For no date it is now, and a millisecond later with
   * each line.
   */
  Instant at(ShotRow row) {
    return row.fired()
        .flatMap(When::instant)
        .or(() -> day(row).map(this::next))
        .orElseGet(() -> now.plusMillis(undated++));
  }

  /** The day that names the session, if the line doesn't name it. */
  LocalDate date(ShotRow row) {
    return day(row).orElseGet(() -> LocalDate.ofInstant(now, zone));
  }

  private static Optional<LocalDate> day(ShotRow row) {
    return row.fired().map(When::day).or(() -> row.session().flatMap(Firing::dayNamed));
  }

  private static Optional<LocalDate> dayNamed(String session) {
    Matcher named = DAY_OF_SESSION.matcher(session);
    return named.matches()
        ? When.parse(named.group(1), ZoneId.of("Z")).map(When::day)
        : Optional.empty();
  }

  private Instant next(LocalDate day) {
    int before = ofDay.merge(day, 1, Integer::sum) - 1;
    return day.atTime(NOON, 0).atZone(zone).toInstant().plusSeconds(before);
  }
}
