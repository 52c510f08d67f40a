package castwell.capture.measure;

import java.util.Locale;
import java.util.Optional;

/**
 * What may be known of a thing besides what must be. Columns, fields, headings, limits, inputs and
 * the keys of its words all follow from its one entry.
 */
public sealed interface Measure permits BowMeasure, ArrowMeasure {

  /**
   * How another measure was taken.
   *
   * @param si what it is where nobody says otherwise
   */
  record Usual(Measure with, double si) {}

  String name();

  Entry entry();

  /** Whose words it is among. */
  String room();

  /** Of what tells how another measure was taken. */
  default Optional<Usual> usual() {
    return Optional.empty();
  }

  default Optional<Entry.Number> number() {
    return entry().number();
  }

  default String stem() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** As exports, sheets and requests name it, in the trade's unit. */
  default String field() {
    return stem() + number().map(n -> "_" + n.scale().ending()).orElse("");
  }

  /** As its table names it, in the SI's unit. */
  default String column() {
    return stem() + number().map(n -> "_" + n.scale().family().si()).orElse("");
  }

  /** The key of what people call it. */
  default String label() {
    return room() + "." + stem();
  }

  /** The key of what a refusal calls it. */
  default String refusal() {
    return "refused.what_" + room() + "_" + stem();
  }
}
