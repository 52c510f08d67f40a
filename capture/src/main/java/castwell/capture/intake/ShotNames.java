package castwell.capture.intake;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;

/**
 * Names for shots that bring none, such that a file brought again, or grown by some lines, adds
 * nothing twice. A dated shot is known by its file's name and what it says; one without a date
 * could be any day's, so only the same text as a whole knows it again.
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
