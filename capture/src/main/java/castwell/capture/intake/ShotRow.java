package castwell.capture.intake;

import castwell.capture.intake.sheet.CantRead;
import castwell.capture.intake.sheet.Line;
import castwell.capture.word.When;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A shot as a line gives it.
 *
 * @param byPerson whether a person decided if it counts
 * @param reason why it doesn't count, or who brought it back; may be empty
 */
record ShotRow(
    Optional<String> shotId,
    Optional<String> bow,
    Optional<String> arrow,
    OptionalDouble speedMps,
    OptionalDouble ownMps,
    OptionalDouble commonMps,
    Optional<When> fired,
    Optional<String> session,
    Optional<String> station,
    int end,
    boolean counts,
    boolean byPerson,
    String reason,
    String note) {
  private static final int LAST_END = 10_000;

  static ShotRow read(Line line, ZoneId zone) {
    Optional<String> shotId = line.words("shot_id");
    boolean counts = counts(line);
    OptionalDouble speed = notNegative(line, "speed");
    if (speed.isPresent() && speed.getAsDouble() == 0) {
      throw new CantRead("sheet.no_speed", line.named("speed"));
    }
    if (speed.isEmpty() && counts) {
      throw new CantRead("sheet.speed_lacks");
    }
    return new ShotRow(
        shotId,
        name(line, "bow", shotId),
        name(line, "arrow", shotId),
        speed,
        notNegative(line, "speed_u_own"),
        notNegative(line, "speed_u_common"),
        line.when("fired_at", zone),
        line.words("session"),
        station(line),
        end(line),
        counts,
        byPerson(line),
        line.words("reason").orElse(""),
        line.words("note").orElse(""));
  }

  /**
   * The name of a bow or an arrow. Whoever writes a shot down knows what shot it, so it is needed
   * there; a shot that was exported may never have been tagged.
   */
  private static Optional<String> name(Line line, String column, Optional<String> shotId) {
    return shotId.isPresent() ? line.words(column) : Optional.of(line.neededWords(column));
  }

  private static OptionalDouble notNegative(Line line, String column) {
    OptionalDouble value = line.number(column);
    if (value.isPresent() && value.getAsDouble() < 0) {
      throw new CantRead("sheet.negative", line.named(column));
    }
    return value;
  }

  private static boolean counts(Line line) {
    return switch (line.words("counts").orElse("true").toLowerCase(Locale.ROOT)) {
      case "true", "yes", "1" -> true;
      case "false", "no", "0" -> false;
      default -> throw new CantRead("sheet.yes_or_no", line.named("counts"));
    };
  }

  private static boolean byPerson(Line line) {
    return switch (line.words("judged_by").orElse("rule")) {
      case "person" -> true;
      case "rule" -> false;
      default -> throw new CantRead("sheet.judged_by", line.named("judged_by"));
    };
  }

  private static Optional<String> station(Line line) {
    Optional<String> station = line.words("station");
    if (station.isPresent() && !station.get().matches("[A-Za-z0-9._-]{1,32}")) {
      throw new CantRead("sheet.station", line.named("station"));
    }
    return station;
  }

  private static int end(Line line) {
    String end = line.words("end").orElse("1");
    if (!end.matches("\\d{1,5}") || Integer.parseInt(end) < 1 || Integer.parseInt(end) > LAST_END) {
      throw new CantRead("sheet.end", line.named("end"));
    }
    return Integer.parseInt(end);
  }
}
