package castwell.capture.recording;

import java.io.ByteArrayOutputStream;
import java.util.Optional;

/**
 * Writes any bytes as one line of visible ASCII, with {@code \xNN} for other bytes and for the
 * backslash.
 */
final class Escapes {
  private static final char[] HEX = "0123456789ABCDEF".toCharArray();

  private Escapes() {}

  static void append(StringBuilder text, byte value) {
    if (value >= 0x20 && value <= 0x7E && value != '\\') {
      text.append((char) value);
    } else {
      text.append("\\x").append(HEX[value >> 4 & 0xF]).append(HEX[value & 0xF]);
    }
  }

  /**
   * Reads bytes back. A backslash without an x stands for itself, since some recorders leave it as
   * it is.
   *
   * @param from the index of the first byte to read
   * @return the bytes; empty when two hex digits don't follow {@code \x}
   */
  static Optional<byte[]> undo(byte[] text, int from) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(text.length - from);
    for (int i = from; i < text.length; i++) {
      boolean escape = text[i] == '\\' && i + 1 < text.length && text[i + 1] == 'x';
      if (!escape) {
        bytes.write(text[i]);
        continue;
      }
      int high = i + 2 < text.length ? Character.digit(text[i + 2], 16) : -1;
      int low = i + 3 < text.length ? Character.digit(text[i + 3], 16) : -1;
      if (high < 0 || low < 0) {
        return Optional.empty();
      }
      bytes.write(high << 4 | low);
      i += 3;
    }
    return Optional.of(bytes.toByteArray());
  }
}
