package castwell.web.unit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * How many digits a figure may show: one significant digit of its standard uncertainty below 1, two
 * from 1 on (JCGM 100:2008, 7.2.6: at most two). The range page's script goes by the same rule.
 */
final class Digits {
  private Digits() {}

  /**
   * @param u above 0 and finite
   */
  static int decimals(double u) {
    BigDecimal two = new BigDecimal(u).round(new MathContext(2, RoundingMode.HALF_UP));
    int exponent = two.precision() - two.scale() - 1;
    return exponent >= 1 ? 0 : Math.max(1, -exponent);
  }

  static String fixed(double value, int decimals) {
    BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
  }

  /** Without needless zeros. */
  static String plain(double value, int most) {
    String fixed = fixed(value, most);
    return most == 0 ? fixed : fixed.replaceFirst("\\.?0+$", "");
  }
}
