package castwell.web.unit;

import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;

/** Writes numbers with their units; the text is empty where there is no finite number to show. */
public final class FigureText {
  private FigureText() {}

  /**
   * A figure such as "150.2 ± 0.4 ft/s"; without an uncertainty it has the unit's usual decimals.
   */
  public static Optional<String> figure(Unit unit, double si, double uSi) {
    if (!Double.isFinite(si)) {
      return Optional.empty();
    }
    double value = si / unit.si();
    double u = uSi / unit.si();
    if (!(u > 0) || Double.isInfinite(u)) {
      return Optional.of(with(unit, Digits.fixed(value, unit.decimals())));
    }
    int decimals = Digits.decimals(u);
    String plusMinus = Digits.fixed(value, decimals) + " ± " + Digits.fixed(u, decimals);
    return Optional.of(with(unit, plusMinus));
  }

  /** A figure with its interval, such as "150.2 ft/s (149.1 to 151.3)", in the digits of that. */
  public static Optional<String> figure(Unit unit, Estimate estimate, String to) {
    double low = estimate.interval().low() / unit.si();
    double high = estimate.interval().high() / unit.si();
    if (!Double.isFinite(low) || !Double.isFinite(high) || !(high > low)) {
      return figure(unit, estimate.value(), 0);
    }
    int decimals = Digits.decimals((high - low) / 4);
    String value = with(unit, Digits.fixed(estimate.value() / unit.si(), decimals));
    String ends = Digits.fixed(low, decimals) + " " + to + " " + Digits.fixed(high, decimals);
    return Double.isFinite(estimate.value())
        ? Optional.of(value + " (" + ends + ")")
        : Optional.empty();
  }

  /**
   * A number for a field to fill in, with so many significant digits and without needless zeros.
   */
  public static String significant(double value, int digits) {
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** A measured figure, with at most the usual decimals and without needless zeros. */
  public static Optional<String> plain(Unit unit, double si) {
    return Double.isFinite(si)
        ? Optional.of(with(unit, Digits.plain(si / unit.si(), unit.decimals())))
        : Optional.empty();
  }

  /**
   * An interval; both ends have the digits that its half width allows when taken as twice the
   * uncertainty.
   */
  public static Optional<String> interval(Unit unit, Interval si, String to) {
    double low = si.low() / unit.si();
    double high = si.high() / unit.si();
    if (!Double.isFinite(low) || !Double.isFinite(high)) {
      return Optional.empty();
    }
    double u = (high - low) / 4;
    int decimals = u > 0 ? Digits.decimals(u) : unit.decimals();
    return Optional.of(
        with(unit, Digits.fixed(low, decimals) + " " + to + " " + Digits.fixed(high, decimals)));
  }

  private static String with(Unit unit, String number) {
    return number + " " + unit.symbol();
  }
}
