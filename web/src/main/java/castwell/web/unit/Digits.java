package castwell.web.unit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How many digits a figure may show: one significant digit of its standard uncertainty below 1, two
 * from 1 on (JCGM 100:2008, 7.2.6: at most two), and where there are decimals at least one.
 */
public final class Digits {
  private static final int MOST_DECIMALS = 30;

  /**
   * The whole rule: from which uncertainty on a figure has no decimal, from which it has one, two
   * and so on.
   */
  public static final List<Double> LEAST_UNCERTAINTIES =
      IntStream.rangeClosed(0, MOST_DECIMALS).mapToObj(Digits::leastUncertainty).toList();

  private Digits() {}

  /**
   * @param u standard uncertainty, above 0 and finite
   */
  static int decimals(double u) {
    int decimals = 0;
    while (decimals < MOST_DECIMALS && u < LEAST_UNCERTAINTIES.get(decimals)) {
      decimals++;
    }
    return decimals;
  }

  /**
   * The least uncertainty that gets so many decimals: rounded to two digits, 9.95 is 10 and 0.0995
   * is 0.10.
   */
  private static double leastUncertainty(int decimals) {
    BigDecimal least = new BigDecimal("9.95").movePointLeft(decimals == 0 ? 0 : decimals + 1);
    double nearest = least.doubleValue();
    return new BigDecimal(nearest).compareTo(least) < 0 ? Math.nextUp(nearest) : nearest;
  }

  static String fixed(double value, int decimals) {
    BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
  }

  /** A number without needless zeros. */
  static String plain(double value, int most) {
    String fixed = fixed(value, most);
    return most == 0 ? fixed : fixed.replaceFirst("\\.?0+$", "");
  }
}
