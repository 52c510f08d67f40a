package castwell.capture.word;

import java.util.Locale;

/** Writes figures as they stand in a sentence. */
public final class Rounded {
  private Rounded() {}

  public static String to(int decimals, double value) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  /** A whole number with its thousands set apart. */
  public static String grouped(double value) {
    return String.format(Locale.ROOT, "%,.0f", value);
  }

  /** A p value as people say it. */
  public static String p(double p) {
    return p < 0.001 ? "p < 0.001" : "p = " + to(p < 0.1 ? 3 : 2, p);
  }
}
