package castwell.capture.health;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * A figure with what it is worth.
 *
 * @param u standard uncertainty, where it has one
 * @param n how many things it was made from, where they were counted
 */
public record Measured(double value, String unit, OptionalDouble u, OptionalLong n) {

  /** A count, or what a system tells of itself. */
  static Measured plain(double value, String unit) {
    return new Measured(value, unit, OptionalDouble.empty(), OptionalLong.empty());
  }

  static Measured of(double value, String unit, long n) {
    return new Measured(value, unit, OptionalDouble.empty(), OptionalLong.of(n));
  }

  static Measured within(double value, String unit, double u, long n) {
    return new Measured(value, unit, OptionalDouble.of(u), OptionalLong.of(n));
  }
}
