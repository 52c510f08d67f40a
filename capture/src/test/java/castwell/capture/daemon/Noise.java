package castwell.capture.daemon;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.util.Arrays;
import java.util.Random;

/** Bytes that no board says: an endless line, half a line, wild bytes. */
final class Noise {
  private Noise() {}

  /** Without a line feed, since a recording holds lines. */
  static byte[] any(Random random) {
    byte[] bytes = new byte[1 + random.nextInt(120)];
    switch (random.nextInt(4)) {
      case 0 -> {
        bytes = new byte[4000];
        Arrays.fill(bytes, (byte) '9');
        System.arraycopy("$E,".getBytes(US_ASCII), 0, bytes, 0, 3);
      }
      case 1 -> bytes = "$E,1,7,1,A,B,12".getBytes(US_ASCII);
      case 2 -> random.nextBytes(bytes);
      default -> {
        random.nextBytes(bytes);
        bytes[0] = '$';
      }
    }
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = bytes[i] == '\n' ? (byte) '\r' : bytes[i];
    }
    return bytes;
  }
}
