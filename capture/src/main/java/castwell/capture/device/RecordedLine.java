package castwell.capture.device;

import static java.nio.charset.StandardCharsets.US_ASCII;

import castwell.capture.wire.Crc16;
import java.util.Arrays;
import java.util.Locale;

/**
 * One received line.
 *
 * @param micros when its last byte came, in microseconds since the recording began
 * @param bytes what came, without the line's end
 */
public record RecordedLine(long micros, byte[] bytes) {

  /** Whether it ends in the check sum of a whole sentence. */
  boolean isWhole() {
    int star = bytes.length - 5;
    if (star < 1 || bytes[0] != '$' || bytes[star] != '*') {
      return false;
    }
    String crc = String.format(Locale.ROOT, "%04X", Crc16.of(bytes, 1, star));
    return Arrays.equals(crc.getBytes(US_ASCII), 0, 4, bytes, star + 1, bytes.length);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RecordedLine line
        && line.micros == micros
        && Arrays.equals(line.bytes, bytes);
  }

  @Override
  public int hashCode() {
    return Long.hashCode(micros) * 31 + Arrays.hashCode(bytes);
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder().append(micros).append(' ');
    for (byte value : bytes) {
      Escapes.append(text, value);
    }
    return text.toString();
  }
}
