package castwell.analysis.wording;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Something to tell a person, in no language yet.
 *
 * @param key the key of its text
 * @param values the values that stand in the text: numbers, names, amounts, other phrases
 */
public record Phrase(String key, List<Object> values) {
  private static final String BETWEEN = "|";

  public Phrase {
    values = List.copyOf(values);
  }

  public static Phrase of(String key, Object... values) {
    return new Phrase(key, List.of(values));
  }

  /** A phrase of somebody's own words, or of a sentence that was made before. */
  public static Phrase asIs(String words) {
    return of("as_is", words);
  }

  /**
   * The phrase as text to store and {@link #read} again; its values must hold neither other phrases
   * nor a bar.
   */
  public String written() {
    return Stream.concat(Stream.of(key), values.stream().map(String::valueOf))
        .collect(Collectors.joining(BETWEEN));
  }

  public static Phrase read(String written) {
    List<String> parts = List.of(written.split("\\" + BETWEEN, -1));
    return new Phrase(parts.get(0), parts.stream().skip(1).<Object>map(Phrase::value).toList());
  }

  private static Object value(String written) {
    return Amount.read(written).<Object>map(amount -> amount).orElse(written);
  }

  @Override
  public String toString() {
    return written();
  }
}
