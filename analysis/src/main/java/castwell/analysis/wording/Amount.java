package castwell.analysis.wording;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** An amount in a phrase, which each reader is told in units of their own. */
public record Amount(double si, Of what) {

  /** The kind of an amount, with its SI unit. */
  public enum Of {
    SPEED("m/s"),
    LENGTH("m");

    private final String unit;

    Of(String unit) {
      this.unit = unit;
    }
  }

  private static final Pattern WRITTEN = Pattern.compile("(-?\\d+\\.\\d+) (m|m/s)");

  public static Amount speed(double mps) {
    return new Amount(mps, Of.SPEED);
  }

  public static Amount length(double metres) {
    return new Amount(metres, Of.LENGTH);
  }

  static Optional<Amount> read(String written) {
    Matcher found = WRITTEN.matcher(written);
    return found.matches()
        ? Optional.of(
            new Amount(
                Double.parseDouble(found.group(1)),
                found.group(2).equals(Of.LENGTH.unit) ? Of.LENGTH : Of.SPEED))
        : Optional.empty();
  }

  /** The amount in SI, with more digits than any reader is told. */
  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%.4f %s", si, what.unit);
  }
}
