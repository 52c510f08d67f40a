package castwell.capture.device;

import static java.nio.charset.StandardCharsets.US_ASCII;

import castwell.capture.wire.Crc16;
import java.util.Arrays;
import java.util.Locale;

/** Tells whether bytes are one sentence of the wire with the right check sum: {@code $...*CRC4}. */
public final class WholeSentence {
  private WholeSentence() {}

  public static boolean is(byte[] bytes) {
    int star = bytes.length - 5;
    if (star < 1 || bytes[0] != '$' || bytes[star] != '*') {
      return false;
    }
    String crc = String.format(Locale.ROOT, "%04X", Crc16.of(bytes, 1, star));
    return Arrays.equals(crc.getBytes(US_ASCII), 0, 4, bytes, star + 1, bytes.length);
  }
}
