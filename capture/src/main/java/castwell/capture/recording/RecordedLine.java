package castwell.capture.recording;

import castwell.capture.device.WholeSentence;
import java.util.Arrays;

/**
 * One line as it was received.
 *
 * @param micros when its last byte came, in microseconds since the recording began
 * @param bytes the line's bytes without its end
 */
public record RecordedLine(long micros, byte[] bytes) {

  /** Whether it ends in the check sum of a whole sentence. */
  boolean isWhole() {
    return WholeSentence.is(bytes);
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
