package castwell.capture.view;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** Takes a component's value out of its wrappings. */
public final class Plain {
  private Plain() {}

  /**
   * @return text, a number, a truth value, or a shape; a moment and a constant as they are written
   */
  public static Optional<?> of(Object value) {
    if (value instanceof Optional<?> some) {
      return some.flatMap(Plain::of);
    } else if (value instanceof OptionalDouble some) {
      return some.stream().boxed().findFirst();
    } else if (value instanceof OptionalInt some) {
      return some.stream().boxed().findFirst();
    } else if (value instanceof OptionalLong some) {
      return some.stream().boxed().findFirst();
    } else if (value instanceof Enum<?> constant) {
      return Optional.of(Words.of(constant));
    }
    return Optional.of(value instanceof Instant at ? at.toString() : value);
  }
}
