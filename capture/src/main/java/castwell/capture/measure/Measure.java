package castwell.capture.measure;

import java.util.Locale;
import java.util.Optional;

/**
 * A measure of a bow or an arrow that need not be known. Columns, fields, headings, limits, inputs
 * and the keys of its texts all follow from its one entry.
 */
public sealed interface Measure permits BowMeasure, ArrowMeasure {

  /**
   * For a measure that says how another one was taken, such as the span of a spine.
   *
   * @param with the other measure
   * @param si the usual value in SI units, which is assumed where nobody says otherwise
   */
  record Usual(Measure with, double si) {}

  String name();

  Entry entry();

  /** The group of texts that has its label. */
  String textGroup();

  /** The usual value, for a measure that says how another one was taken. */
  default Optional<Usual> usual() {
    return Optional.empty();
  }

  default Optional<Entry.Number> number() {
    return entry().number();
  }

  default String stem() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The name in exports, sheets and requests, which ends in the trade's unit. */
  default String field() {
    return stem() + number().map(n -> "_" + n.scale().ending()).orElse("");
  }

  /** The column's name in its table, which ends in the SI unit. */
  default String column() {
    return stem() + number().map(n -> "_" + n.scale().family().si()).orElse("");
  }

  /** The text key of its name. */
  default String label() {
    return textGroup() + "." + stem();
  }

  /** The text key of its name in a refusal. */
  default String refusal() {
    return "refused.what_" + textGroup() + "_" + stem();
  }
}
