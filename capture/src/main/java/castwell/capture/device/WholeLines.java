package castwell.capture.device;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Optional;

/** Gathers bytes up to a line end, so that few messages carry many sentences. */
final class WholeLines {
  /**
   * The most bytes kept, four times the longest sentence; noise without a line end is handed on
   * beyond that.
   */
  private static final int MOST_KEPT = 480;

  private final ByteArrayOutputStream kept = new ByteArrayOutputStream();

  void reset() {
    kept.reset();
  }

  /** Adds bytes, and returns all lines that are whole by now; empty without any. */
  Optional<byte[]> add(byte[] bytes) {
    int end = bytes.length;
    while (end > 0 && bytes[end - 1] != '\n') {
      end--;
    }
    if (end == 0 && kept.size() + bytes.length > MOST_KEPT) {
      end = bytes.length;
    }
    if (end == 0) {
      kept.writeBytes(bytes);
      return Optional.empty();
    }
    kept.write(bytes, 0, end);
    byte[] whole = kept.toByteArray();
    kept.reset();
    kept.writeBytes(Arrays.copyOfRange(bytes, end, bytes.length));
    return Optional.of(whole);
  }
}
