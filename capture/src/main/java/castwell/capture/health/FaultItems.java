package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.station.FaultCounts;
import castwell.capture.view.health.Level;
import castwell.capture.wire.Fault;
import castwell.capture.word.Lasting;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Judges what went wrong between board and store over the last hours, one item for each kind of
 * fault.
 */
final class FaultItems {
  private static final String TITLE = "health.title_faults";
  private static final Subject ALL = Subject.of("faults", TITLE);
  private static final Phrase CABLE = Phrase.of("health.cable");

  /**
   * How many faults of a kind in an hour are too many. A board sends some 3,600 lines an hour, so
   * 36 faults are one in a hundred (common practice, no source).
   */
  private record Tolerance(Phrase what, double attention, double bad, Phrase remedy) {
    Level level(double anHour) {
      return anHour >= bad ? Level.BAD : anHour >= attention ? Level.ATTENTION : Level.WELL;
    }
  }

  private FaultItems() {}

  static List<Item> of(Vitals vitals) {
    return vitals
        .faults()
        .filter(faults -> !faults.over().isZero())
        .map(FaultItems::of)
        .orElseGet(
            () ->
                List.of(
                    Item.cantTell(
                        ALL,
                        Phrase.of("health.faults_not_counted"),
                        Phrase.of("health.faults_look"))));
  }

  private static List<Item> of(FaultCounts faults) {
    if (faults.recent().isEmpty()) {
      return List.of(
          Item.well(ALL, Phrase.of("health.faults_none", Lasting.words(faults.over())))
              .with(Measured.of(0, "an hour", 0)));
    }
    return faults.recent().entrySet().stream().map(entry -> of(entry, faults.over())).toList();
  }

  private static Item of(Map.Entry<Fault, Long> fault, Duration over) {
    long count = fault.getValue();
    // A single fault in the first minute isn't taken as sixty an hour.
    double hours = Math.max(1, over.toMillis() / 3.6e6);
    Tolerance tolerance = tolerance(fault.getKey());
    String kind = fault.getKey().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    Phrase told = Phrase.of("health.faults", tolerance.what(), count, Lasting.words(over));
    return Item.of(
            Subject.of("fault " + kind, TITLE),
            tolerance.level(count / hours),
            told,
            tolerance.remedy())
        .with(Measured.of(count / hours, "an hour", count));
  }

  private static Tolerance tolerance(Fault fault) {
    return switch (fault) {
      case GARBAGE -> new Tolerance(Phrase.of("health.fault_garbage"), 36, 360, CABLE);
      case TRUNCATED -> new Tolerance(Phrase.of("health.fault_truncated"), 36, 360, CABLE);
      case TOO_LONG -> new Tolerance(Phrase.of("health.fault_too_long"), 36, 360, CABLE);
      case BAD_CRC -> new Tolerance(Phrase.of("health.fault_bad_crc"), 36, 360, CABLE);
      case LINE_GAP -> new Tolerance(Phrase.of("health.fault_line_gap"), 36, 360, CABLE);
      case EDGE_GAP -> new Tolerance(Phrase.of("health.fault_edge_gap"), 36, 360, CABLE);
      case REPEATED_EDGE -> new Tolerance(Phrase.of("health.fault_repeated_edge"), 1e9, 1e9, CABLE);
      case LOST_EDGE -> new Tolerance(Phrase.of("health.fault_lost_edge"), 1, 36, CABLE);
      case DROPPED_BY_BOARD ->
          new Tolerance(
              Phrase.of("health.fault_dropped_by_board"), 1, 360, Phrase.of("health.lamp"));
      case BAD_FIELD ->
          new Tolerance(
              Phrase.of("health.fault_bad_field"), 1, 36, Phrase.of("health.remedy_firmware"));
      case UNKNOWN_SENTENCE ->
          new Tolerance(
              Phrase.of("health.fault_unknown_sentence"),
              36,
              1e9,
              Phrase.of("health.remedy_castwell"));
      case NAME_REUSED ->
          new Tolerance(
              Phrase.of("health.fault_name_reused"), 1, 36, Phrase.of("health.remedy_names"));
      case BOARD_RESTARTED ->
          new Tolerance(
              Phrase.of("health.fault_board_restarted"), 1, 10, Phrase.of("health.remedy_supply"));
      default ->
          new Tolerance(Phrase.of("health.fault_other"), 1, 36, Phrase.of("health.remedy_log"));
    };
  }
}
