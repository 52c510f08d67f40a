package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * A figure with its uncertainty.
 *
 * @param u standard uncertainty, where it has one
 * @param n how many values it was made from, where they were counted
 */
public record Measured(double value, String unit, OptionalDouble u, OptionalLong n) {
  /**
   * Units that are words; all others are symbols, which are the same in all languages (ISO 80000).
   */
  private static final Map<String, String> WORDS =
      Map.of(
          "of 1023", "health.unit_of_1023",
          "an hour", "health.unit_an_hour",
          "messages", "health.unit_messages",
          "passages since", "health.unit_since",
          "passages wait", "health.unit_wait");

  Phrase told() {
    String key = WORDS.get(unit);
    return key == null ? Phrase.asIs(unit) : Phrase.of(key);
  }

  /** A count, or another figure without an uncertainty. */
  static Measured plain(double value, String unit) {
    return new Measured(value, unit, OptionalDouble.empty(), OptionalLong.empty());
  }

  static Measured of(double value, String unit, long n) {
    return new Measured(value, unit, OptionalDouble.empty(), OptionalLong.of(n));
  }

  static Measured within(double value, String unit, double u, long n) {
    return new Measured(value, unit, OptionalDouble.of(u), OptionalLong.of(n));
  }
}
