package castwell.web.report;

import castwell.analysis.uncertainty.Quantity;
import castwell.capture.view.Interval95;
import castwell.capture.word.Rounded;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import castwell.web.unit.Unit;
import castwell.web.unit.UnitSystem;
import java.util.List;

/** A report's sentences and the quantities in them, in the reader's units. */
public record ReportFormat(Speech speech) {
  public static final ReportFormat TRADE = new ReportFormat(Speech.TRADE);

  public String say(String key, Object... arguments) {
    return speech.say(key, arguments);
  }

  private UnitSystem units() {
    return speech.units();
  }

  /** "Heron and Wren". */
  public String and(List<String> names) {
    return String.join(" " + say("report.and") + " ", names);
  }

  /**
   * "150.2 ft/s (149.1 to 151.3)", or the value alone when nothing bounds it.
   *
   * @param decimals shown in the trade's unit
   */
  public String said(Dimension dimension, int decimals, Quantity quantity) {
    return said(dimension, "", decimals, quantity);
  }

  /**
   * @param per what follows the unit, such as " an hour"
   */
  public String said(Dimension dimension, String per, int decimals, Quantity quantity) {
    double si = units().of(dimension).si();
    int shown = decimals(dimension, decimals);
    Interval95 ends = Trade.ci95(si, quantity);
    String value = Rounded.to(shown, quantity.value() / si) + " " + symbol(dimension) + per;
    boolean isExact = quantity.standardUncertainty() == 0;
    return isExact || !ends.hasBothEnds()
        ? value
        : "%s (%s)".formatted(value, ReportText.shown(ends, shown));
  }

  /** "2.0 ft/s". */
  public String plain(Dimension dimension, int decimals, double si) {
    double value = si / units().of(dimension).si();
    return Rounded.to(decimals(dimension, decimals), value) + " " + symbol(dimension);
  }

  /** Reports are read on terminals too, where a middle dot may be missing. */
  private String symbol(Dimension dimension) {
    String symbol = units().of(dimension).symbol();
    return units() == UnitSystem.TRADE ? symbol.replace('·', ' ') : symbol;
  }

  /** As fine in either unit. */
  private int decimals(Dimension dimension, int decimals) {
    Unit trade = UnitSystem.TRADE.of(dimension);
    double coarser = trade.si() / units().of(dimension).si();
    return coarser < 0.5 ? decimals + 1 : decimals;
  }
}
