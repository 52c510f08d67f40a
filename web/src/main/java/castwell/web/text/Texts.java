package castwell.web.text;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Map;
import java.util.Properties;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The texts for people, from one file a language. {0} stands for the first argument, {0|one|many}
 * for one of two words: the first if that argument is 1.
 */
public final class Texts {
  private static final Pattern PLACE = Pattern.compile("\\{(\\d)(?:\\|([^|}]*)\\|([^|}]*))?}");

  private static final Texts ENGLISH = of("en");
  private static final Texts CHOSEN = chosen(System.getProperty("castwell.language", "en"));

  private final SortedMap<String, String> texts;

  private Texts(SortedMap<String, String> texts) {
    this.texts = texts;
  }

  public static Texts english() {
    return ENGLISH;
  }

  /** The texts in the language that the program was started with. */
  public static Texts chosen() {
    return CHOSEN;
  }

  private static Texts chosen(String language) {
    return Texts.class.getResource(language + ".properties") == null ? ENGLISH : of(language);
  }

  private static Texts of(String language) {
    Properties file = new Properties();
    try (Reader reader =
        new InputStreamReader(
            Texts.class.getResourceAsStream(language + ".properties"), StandardCharsets.UTF_8)) {
      file.load(reader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    SortedMap<String, String> texts = new TreeMap<>();
    file.forEach((key, text) -> texts.put((String) key, (String) text));
    return new Texts(Collections.unmodifiableSortedMap(texts));
  }

  /** Every text by its key. */
  public Map<String, String> all() {
    return texts;
  }

  /** The texts whose keys begin this way. */
  public Map<String, String> all(String beginning) {
    return texts.subMap(beginning, beginning + Character.MAX_VALUE);
  }

  /**
   * @param key one that the file has
   */
  public String say(String key, Object... arguments) {
    String text = texts.get(key);
    if (text == null) {
      throw new IllegalArgumentException("there is no text " + key);
    }
    Matcher place = PLACE.matcher(text);
    return place.replaceAll(found -> Matcher.quoteReplacement(put(place, arguments)));
  }

  private static String put(Matcher place, Object[] arguments) {
    String argument = String.valueOf(arguments[Integer.parseInt(place.group(1))]);
    if (place.group(2) == null) {
      return argument;
    }
    return argument.equals("1") ? place.group(2) : place.group(3);
  }
}
