package castwell.capture.device;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Asks whether a board is at the other end of a link, by a {@code ?} that is repeated every second,
 * since a board that starts anew doesn't hear the first one.
 *
 * @param micros the host's monotonic clock
 * @param patience how long to wait for an answer
 */
record BoardCall(LongSupplier micros, Duration patience) {
  private static final byte[] QUESTION = "?\n".getBytes(US_ASCII);
  private static final long AGAIN_AFTER_MICROS = 1_000_000;
  private static final int MOST_BYTES = 1 << 16;

  /**
   * Asks over a link.
   *
   * @return a link that first gives once more what was heard meanwhile, then the rest; empty when
   *     nothing answered
   */
  Optional<Link> ask(Link link) {
    ByteArrayOutputStream heard = new ByteArrayOutputStream();
    byte[] buffer = new byte[4096];
    long started = micros.getAsLong();
    long asks = 0;
    try {
      while (goesOn(started) && heard.size() < MOST_BYTES) {
        if (micros.getAsLong() - started >= asks * AGAIN_AFTER_MICROS) {
          link.write(QUESTION);
          asks++;
        }
        int count = link.read(buffer);
        if (count < 0) {
          return Optional.empty();
        }
        heard.write(buffer, 0, count);
        if (holdsIdentity(heard.toByteArray())) {
          return Optional.of(new HeardLink(link, heard.toByteArray()));
        }
      }
      return Optional.empty();
    } catch (IOException gone) {
      return Optional.empty();
    }
  }

  private boolean goesOn(long startedMicros) {
    return micros.getAsLong() - startedMicros < patience.toNanos() / 1000
        && !Thread.currentThread().isInterrupted();
  }

  private static boolean holdsIdentity(byte[] heard) {
    int start = -1;
    for (int i = 0; i < heard.length; i++) {
      if (heard[i] == '$') {
        start = i;
      } else if ((heard[i] == '\r' || heard[i] == '\n') && start >= 0) {
        byte[] sentence = Arrays.copyOfRange(heard, start, i);
        if (WholeSentence.is(sentence) && sentence[1] == 'I' && sentence[2] == ',') {
          return true;
        }
        start = -1;
      }
    }
    return false;
  }
}
