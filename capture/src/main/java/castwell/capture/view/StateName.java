package castwell.capture.view;

import java.time.Instant;
import java.time.ZoneId;

/** A bow state is named by the day it began, or by the minute within one. */
public final class StateName {
  private StateName() {}

  public static String of(Instant since, ZoneId zone) {
    var local = since.atZone(zone).toLocalDateTime();
    return local.toLocalTime().toSecondOfDay() == 0
        ? local.toLocalDate().toString()
        : local.withNano(0).toString();
  }
}
