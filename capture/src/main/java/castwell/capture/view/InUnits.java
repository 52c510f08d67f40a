package castwell.capture.view;

import java.util.Optional;
import java.util.OptionalDouble;

/** Converts SI values to units of the trade, and back. */
public final class InUnits {
  private InUnits() {}

  public static OptionalDouble of(Optional<Double> si, double unit) {
    return si.isPresent() ? OptionalDouble.of(si.get() / unit) : OptionalDouble.empty();
  }

  public static OptionalDouble of(OptionalDouble si, double unit) {
    return si.isPresent() ? OptionalDouble.of(si.getAsDouble() / unit) : OptionalDouble.empty();
  }

  public static OptionalDouble si(OptionalDouble value, double unit) {
    return value.isPresent()
        ? OptionalDouble.of(value.getAsDouble() * unit)
        : OptionalDouble.empty();
  }
}
