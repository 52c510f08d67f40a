package castwell.web.metrics;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** An Accept header (RFC 9110, 12.5.1), which says how much each media type is wanted. */
record AcceptedTypes(String header) {

  /** A range of media types with its weight. */
  private record Range(String type, double quality) {
    static Range of(String text) {
      String[] parts = text.split(";");
      double quality =
          Arrays.stream(parts)
              .map(part -> part.strip().toLowerCase(Locale.ROOT))
              .filter(part -> part.startsWith("q="))
              .map(part -> number(part.substring(2)))
              .findFirst()
              .orElse(1.0);
      return new Range(parts[0].strip(), quality);
    }

    private static double number(String text) {
      return text.matches("[01](\\.\\d{0,3})?") ? Double.parseDouble(text) : 0;
    }

    /**
     * How specifically this range covers a type, larger for more specific; empty where it doesn't.
     */
    Optional<Integer> covers(String wanted) {
      if (type.equalsIgnoreCase(wanted)) {
        return Optional.of(2);
      }
      if (type.equals(wanted.replaceFirst("/.*", "/*"))) {
        return Optional.of(1);
      }
      return type.equals("*/*") ? Optional.of(0) : Optional.empty();
    }
  }

  /** The weight of the most specific range that covers the type; 0 when none does. */
  double quality(String type) {
    return Arrays.stream(header.split(","))
        .map(Range::of)
        .filter(range -> range.covers(type).isPresent())
        .max(Comparator.comparing(range -> range.covers(type).orElseThrow()))
        .map(Range::quality)
        .orElse(0.0);
  }
}
