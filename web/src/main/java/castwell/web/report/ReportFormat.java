package castwell.web.report;

import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
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

  private static final Interval UNBOUNDED =
      new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

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
    Interval ends =
        quantity.standardUncertainty() == 0 ? UNBOUNDED : quantity.interval(Trade.COVERAGE);
    return said(dimension, per, decimals, new Estimate(quantity.value(), ends));
  }

  /** "150.2 ft/s (149.1 to 151.3)", or the value alone when nothing bounds it. */
  public String said(Dimension dimension, int decimals, Estimate estimate) {
    return said(dimension, "", decimals, estimate);
  }

  private String said(Dimension dimension, String per, int decimals, Estimate estimate) {
    double si = units().of(dimension).si();
    int shown = decimals(dimension, decimals);
    Interval95 ends = Trade.ci95(si, estimate);
    String value = Rounded.to(shown, estimate.value() / si) + " " + symbol(dimension) + per;
    return ends.hasBothEnds() ? "%s (%s)".formatted(value, ReportText.shown(ends, shown)) : value;
  }

  /** "2.0 ft/s". */
  public String plain(Dimension dimension, int decimals, double si) {
    double value = si / units().of(dimension).si();
    return Rounded.to(decimals(dimension, decimals), value) + " " + symbol(dimension);
  }

  /** "149.1 to 151.3 ft/s". */
  public String interval(Dimension dimension, Interval interval) {
    return speech.interval(dimension, interval);
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
