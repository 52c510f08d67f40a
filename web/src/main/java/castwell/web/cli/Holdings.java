package castwell.web.cli;

import castwell.capture.store.Holding;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/** Says in words what a database holds. */
final class Holdings {
  private Holdings() {}

  static String words(Holding holding) {
    String dates =
        holding.first().isPresent()
            ? " from %s to %s"
                .formatted(
                    date(holding.first().get()), date(holding.last().orElse(holding.first().get())))
            : "";
    return "%d passages%s, %d edges".formatted(holding.passages(), dates, holding.edges());
  }

  private static LocalDate date(Instant instant) {
    return LocalDate.ofInstant(instant, ZoneId.systemDefault());
  }
}
