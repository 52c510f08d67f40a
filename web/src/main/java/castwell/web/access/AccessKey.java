package castwell.web.access;

import java.security.SecureRandom;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The key as people see it: 28 characters of an alphabet without look-alikes (Crockford's base 32),
 * five random bits each, in groups of four.
 */
final class AccessKey {
  private static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final int SIGNS = 28; // These are 140 bits.
  private static final int GROUP = 4;

  private AccessKey() {}

  static String fresh(SecureRandom random) {
    return IntStream.range(0, SIGNS / GROUP)
        .mapToObj(
            group ->
                random
                    .ints(GROUP, 0, ALPHABET.length())
                    .mapToObj(i -> String.valueOf(ALPHABET.charAt(i)))
                    .collect(Collectors.joining()))
        .collect(Collectors.joining("-"));
  }

  /**
   * The key that somebody meant to type: in any case, with or without hyphens, O for 0, I or L for
   * 1.
   */
  static String meant(String typed) {
    return typed
        .toUpperCase(Locale.ROOT)
        .replaceAll("[\\s-]", "")
        .replace('O', '0')
        .replace('I', '1')
        .replace('L', '1');
  }
}
