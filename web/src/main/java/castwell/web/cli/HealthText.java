package castwell.web.cli;

import castwell.capture.view.health.ItemView;
import castwell.capture.view.health.Level;
import castwell.capture.view.health.PartHealth;
import castwell.capture.view.health.StationPart;
import castwell.capture.view.health.WholeHealth;

/**
 * Writes the health of everything as text, in which the worst stands out by its shape and its word.
 */
final class HealthText {
  private HealthText() {}

  static String of(WholeHealth health) {
    StringBuilder text = new StringBuilder();
    for (StationPart station : health.stations()) {
      add(text, "Station " + station.station(), station.health());
    }
    add(text, "This computer", health.computer());
    return text.toString();
  }

  private static void add(StringBuilder text, String who, PartHealth health) {
    text.append("%s: %s%n".formatted(who, health.level().word()));
    for (ItemView item : health.items()) {
      text.append(
          "  %s %-10s  %s: %s%n"
              .formatted(shape(item.level()), item.level().word(), item.title(), item.sentence()));
      if (item.level() != Level.WELL) {
        text.append("  %14s→ %s%n".formatted("", item.remedy()));
      }
    }
  }

  private static String shape(Level level) {
    return switch (level) {
      case WELL -> "●";
      case ATTENTION -> "▲";
      case BAD -> "✕";
      case CANT_TELL -> "?";
    };
  }
}
