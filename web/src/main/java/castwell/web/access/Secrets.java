package castwell.web.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Hashes secrets for storage. A slow password hash would be wasted here: it makes up for words that
 * can be guessed, and nobody guesses 128 random bits, however fast the hash.
 */
final class Secrets {
  private Secrets() {}

  static String hash(String secret) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e); // Every Java has SHA-256.
    }
  }

  /** Compares in a time that doesn't depend on where the two differ. */
  static boolean same(String hash, String other) {
    return MessageDigest.isEqual(
        hash.getBytes(StandardCharsets.US_ASCII), other.getBytes(StandardCharsets.US_ASCII));
  }
}
