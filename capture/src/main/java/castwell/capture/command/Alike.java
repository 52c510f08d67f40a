package castwell.capture.command;

import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Compares two figures, where one may have been written in some unit with 12 digits and read again.
 */
public final class Alike {
  private static final double ROUNDED = 1e-10;

  private Alike() {}

  public static boolean are(double a, double b) {
    return Math.abs(a - b) <= ROUNDED * Math.max(Math.abs(a), Math.abs(b));
  }

  public static boolean are(OptionalDouble a, OptionalDouble b) {
    return a.isPresent() && b.isPresent()
        ? are(a.getAsDouble(), b.getAsDouble())
        : a.isPresent() == b.isPresent();
  }

  /**
   * @param catalogue every measure that there is
   */
  public static <M extends Enum<M> & Measure> boolean are(
      M[] catalogue, Measures<M> a, Measures<M> b) {
    return a.words().equals(b.words())
        && Arrays.stream(catalogue).allMatch(measure -> are(a.number(measure), b.number(measure)));
  }
}
