package castwell.capture.health;

import castwell.capture.daemon.FaultCounts;
import castwell.capture.wire.Fault;
import castwell.capture.word.Lasting;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What went wrong between board and store over the last hours, kind by kind. */
final class FaultItems {
  private static final String NAME = "faults";
  private static final String CABLE =
      "Check the cable and its plugs; keep it away from motors and mains.";

  /**
   * How many an hour are too many. A board says some 3,600 lines an hour, so 36 of them are one in
   * a hundred (common practice, no source).
   */
  private record Tolerance(String what, double attention, double bad, String remedy) {
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
                        NAME,
                        "Faults are counted while a board is listened to.",
                        "Look again while Castwell runs.")));
  }

  private static List<Item> of(FaultCounts faults) {
    if (faults.recent().isEmpty()) {
      return List.of(
          Item.well(NAME, "None in the last %s.".formatted(Lasting.words(faults.over())))
              .with(Measured.of(0, "an hour", 0)));
    }
    return faults.recent().entrySet().stream().map(entry -> of(entry, faults.over())).toList();
  }

  private static Item of(Map.Entry<Fault, Long> fault, Duration over) {
    long count = fault.getValue();
    // One fault in the first minute isn't sixty an hour.
    double hours = Math.max(1, over.toMillis() / 3.6e6);
    Tolerance tolerance = tolerance(fault.getKey());
    String name = "fault " + fault.getKey().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    String told = "%s: %d in the last %s.".formatted(tolerance.what(), count, Lasting.words(over));
    return Item.of(name, tolerance.level(count / hours), told, tolerance.remedy())
        .with(Measured.of(count / hours, "an hour", count));
  }

  private static Tolerance tolerance(Fault fault) {
    return switch (fault) {
      case GARBAGE -> new Tolerance("Bytes that are no sentence", 36, 360, CABLE);
      case TRUNCATED -> new Tolerance("Sentences cut short", 36, 360, CABLE);
      case TOO_LONG -> new Tolerance("Lines without an end", 36, 360, CABLE);
      case BAD_CRC -> new Tolerance("Sentences with a wrong check sum", 36, 360, CABLE);
      case LINE_GAP -> new Tolerance("Sentences lost on the way", 36, 360, CABLE);
      case EDGE_GAP -> new Tolerance("Edges that had to be asked for", 36, 360, CABLE);
      case REPEATED_EDGE ->
          new Tolerance("Edges that came again, which is harmless", 1e9, 1e9, CABLE);
      case LOST_EDGE -> new Tolerance("Edges that never came", 1, 36, CABLE);
      case DROPPED_BY_BOARD ->
          new Tolerance(
              "Edges that the board dropped",
              1,
              360,
              "Look for a flickering lamp, sun on a sensor, or something that hangs in a gate.");
      case BAD_FIELD ->
          new Tolerance(
              "Sentences with a wrong field", 1, 36, "Bring the board's firmware up to date.");
      case UNKNOWN_SENTENCE ->
          new Tolerance("Sentences of an unknown type", 36, 1e9, "Bring Castwell up to date.");
      case NAME_REUSED ->
          new Tolerance("Boards of the same name", 1, 36, "Give each board a name of its own.");
      case BOARD_RESTARTED ->
          new Tolerance("Starts of the board", 1, 10, "Check the board's supply and its plugs.");
      default -> new Tolerance("Other faults", 1, 36, "See what the log says.");
    };
  }
}
