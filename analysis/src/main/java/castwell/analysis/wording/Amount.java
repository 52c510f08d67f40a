package castwell.analysis.wording;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** An amount in a phrase, which each reader is told in units of their own. */
public record Amount(double si, Of what) {

  /** The kind of an amount, with its SI unit. */
  public enum Of {
    SPEED("m/s", 4),
    LENGTH("m", 4),
    DURATION("s", 7);

    private final String unit;
    private final int decimals;

    Of(String unit, int decimals) {
      this.unit = unit;
      this.decimals = decimals;
    }

    private static Of unit(String unit) {
      return Stream.of(values()).filter(of -> of.unit.equals(unit)).findFirst().orElseThrow();
    }
  }

  private static final Pattern WRITTEN = Pattern.compile("(-?\\d+\\.\\d+) (m|m/s|s)");

  public static Amount speed(double mps) {
    return new Amount(mps, Of.SPEED);
  }

  public static Amount length(double metres) {
    return new Amount(metres, Of.LENGTH);
  }

  public static Amount duration(double seconds) {
    return new Amount(seconds, Of.DURATION);
  }

  static Optional<Amount> read(String written) {
    Matcher found = WRITTEN.matcher(written);
    return found.matches()
        ? Optional.of(new Amount(Double.parseDouble(found.group(1)), Of.unit(found.group(2))))
        : Optional.empty();
  }

  /** The amount in SI, with more digits than any reader is told. */
  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%." + what.decimals + "f %s", si, what.unit);
  }
}
