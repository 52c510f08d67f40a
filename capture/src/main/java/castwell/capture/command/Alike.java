package castwell.capture.command;

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
}
