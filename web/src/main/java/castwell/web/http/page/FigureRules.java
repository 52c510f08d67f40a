package castwell.web.http.page;

import castwell.capture.view.Json;
import castwell.capture.word.Lasting;
import castwell.web.text.Texts;
import castwell.web.unit.Digits;
import castwell.web.unit.Dimension;
import castwell.web.unit.Unit;
import castwell.web.unit.UnitSystem;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * By what the scripts choose digits, units and words for durations, as a module: the same that the
 * pages and sentences made here go by.
 */
final class FigureRules {
  /** What the scripts show; their feed and API tell it in the trade's unit. */
  private static final List<Dimension> SHOWN =
      List.of(
          Dimension.SPEED,
          Dimension.ENERGY,
          Dimension.MOMENTUM,
          Dimension.ARROW_MASS,
          Dimension.FORCE,
          Dimension.DRAW_LENGTH);

  /**
   * @param factor how many of it are one of the trade's unit
   */
  record SiUnit(String symbol, double factor) {}

  /**
   * @param from how many seconds are told in it, at least
   * @param words with a place for how many
   */
  record TimeUnit(long from, long seconds, String words) {}

  private FigureRules() {}

  static String module(Texts texts) {
    List<TimeUnit> times =
        Lasting.UNITS.stream()
            .map(u -> new TimeUnit(u.from(), u.seconds(), texts.all().get(u.key())))
            .toList();
    return constant("LEAST_UNCERTAINTIES", Digits.LEAST_UNCERTAINTIES)
        + constant("SI", siUnits())
        + constant("TIMES", times);
  }

  private static Map<String, SiUnit> siUnits() {
    Map<String, SiUnit> units = new LinkedHashMap<>();
    for (Dimension dimension : SHOWN) {
      Unit trade = UnitSystem.TRADE.of(dimension);
      Unit si = UnitSystem.SI.of(dimension);
      units.put(trade.symbol(), new SiUnit(si.symbol(), trade.si() / si.si()));
    }
    return units;
  }

  private static String constant(String name, Object value) {
    return "export const " + name + " = " + Json.text(value) + ";\n";
  }
}
