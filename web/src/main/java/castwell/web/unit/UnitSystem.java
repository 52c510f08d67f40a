package castwell.web.unit;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The units in which a person reads. */
public enum UnitSystem {
  TRADE,
  SI;

  public Unit of(Dimension dimension) {
    return this == TRADE ? dimension.trade() : dimension.si();
  }

  /** The name in settings, cookies and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static Optional<UnitSystem> of(String word) {
    return Stream.of(values()).filter(system -> system.word().equals(word)).findFirst();
  }
}
