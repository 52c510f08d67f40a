package castwell.capture.view;

import java.time.Instant;
import java.time.ZoneId;

/** Names a bow's state by the day it began, or by the minute if it began within a day. */
public final class StateName {
  private StateName() {}

  public static String of(Instant since, ZoneId zone) {
    var local = since.atZone(zone).toLocalDateTime();
    return local.toLocalTime().toSecondOfDay() == 0
        ? local.toLocalDate().toString()
        : local.withNano(0).toString();
  }
}
