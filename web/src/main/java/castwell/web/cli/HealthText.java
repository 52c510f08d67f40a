package castwell.web.cli;

import com.fasterxml.jackson.databind.JsonNode;

/** How everything is, to be read: the worst stands out by its shape and its word. */
final class HealthText {
  private HealthText() {}

  static String of(JsonNode health) {
    StringBuilder text = new StringBuilder();
    for (JsonNode station : health.path("stations")) {
      add(text, "Station " + station.path("station").asText(), station);
    }
    add(text, "This computer", health.path("computer"));
    return text.toString();
  }

  private static void add(StringBuilder text, String who, JsonNode health) {
    text.append("%s: %s%n".formatted(who, health.path("level").asText()));
    for (JsonNode item : health.path("items")) {
      String level = item.path("level").asText();
      text.append(
          "  %s %-10s  %s: %s%n"
              .formatted(
                  shape(level),
                  level,
                  item.path("title").asText(),
                  item.path("sentence").asText()));
      if (!level.equals("well")) {
        text.append("  %14s→ %s%n".formatted("", item.path("remedy").asText()));
      }
    }
  }

  private static String shape(String level) {
    return switch (level) {
      case "well" -> "●";
      case "attention" -> "▲";
      case "bad" -> "✕";
      default -> "?";
    };
  }
}
