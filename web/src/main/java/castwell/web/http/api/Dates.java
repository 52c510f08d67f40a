package castwell.web.http.api;

import castwell.capture.word.When;
import castwell.web.http.route.Body;
import java.time.Instant;
import java.time.ZoneId;

/** Dates and times in requests. */
final class Dates {
  private Dates() {}

  /**
   * A day's first instant, a minute of it in a time zone, or an instant (RFC 3339).
   *
   * @param field it stands in
   */
  static Instant instant(String field, String text, ZoneId zone) {
    return When.parse(text, zone)
        .map(when -> when.begin(zone))
        .orElseThrow(() -> Body.invalid("refused.field_date", field));
  }
}
