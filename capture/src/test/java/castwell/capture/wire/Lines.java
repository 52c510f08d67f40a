package castwell.capture.wire;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

/** What a board would say: lines of the wire, made without any code of the program. */
final class Lines {
  private Lines() {}

  /** The body between <code>$</code> and <code>*</code> as a whole line. */
  static String line(String body) {
    return whole(body) + "\r\n";
  }

  /** Likewise without the line's end. */
  static String whole(String body) {
    return "$%s*%04X".formatted(body, crc(body));
  }

  static byte[] bytes(String text) {
    return text.getBytes(ISO_8859_1);
  }

  /** Bit by bit: polynomial 1021, initial FFFF, not reflected. */
  static int crc(String body) {
    int crc = 0xFFFF;
    for (byte b : bytes(body)) {
      for (int bit = 7; bit >= 0; bit--) {
        boolean out = (crc >> 15 & 1) != (b >> bit & 1);
        crc = crc << 1 & 0xFFFF ^ (out ? 0x1021 : 0);
      }
    }
    return crc;
  }
}
