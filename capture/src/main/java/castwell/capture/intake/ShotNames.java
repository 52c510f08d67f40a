package castwell.capture.intake;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;

/**
 * Makes names for shots that come without one, such that a file that is brought again, or has grown
 * by some lines, adds nothing twice. A dated shot is named after its file and what it says. One
 * without a date could be any day's, so it gets the same name only where the text as a whole is the
 * same.
 */
final class ShotNames {
  private static final int LENGTH = 16;

  private final String source;
  private final String text;
  private final Map<String, Integer> alike = new HashMap<>();

  ShotNames(String source, String text) {
    this.source = source;
    this.text = hash(text);
  }

  String of(ShotRow row) {
    boolean dated = row.fired().isPresent() || row.session().isPresent();
    String said =
        String.join(
            "\n",
            source,
            dated ? "" : text,
            row.bow().orElse(""),
            row.arrow().orElse(""),
            row.speedMps().toString(),
            row.fired().toString(),
            row.session().orElse(""));
    int before = alike.merge(said, 1, Integer::sum) - 1;
    return "h-" + hash(said + "\n" + before).substring(0, LENGTH);
  }

  private static String hash(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
