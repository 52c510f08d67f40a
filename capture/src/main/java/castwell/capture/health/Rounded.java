package castwell.capture.health;

import java.util.Locale;

/** Figures as they stand in a sentence. */
final class Rounded {
  private Rounded() {}

  static String to(int decimals, double value) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  /** Whole, its thousands apart. */
  static String grouped(double value) {
    return String.format(Locale.ROOT, "%,.0f", value);
  }
}
