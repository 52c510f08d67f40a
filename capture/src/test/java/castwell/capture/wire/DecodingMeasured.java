package castwell.capture.wire;

import com.sun.management.ThreadMXBean;
import java.io.ByteArrayOutputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/**
 * How many sentences one core decodes in a second, and what it allocates for them. See .ci/measure.
 */
class DecodingMeasured {
  private static final int SENTENCES = 50_000;
  private static final int ROUNDS = 40;

  @Test
  void sentencesASecond() {
    byte[] bytes = fourEdgesABeat();
    double[] perSecond = new double[ROUNDS];
    long[] allocated = new long[ROUNDS];
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    int[] heard = new int[1];
    for (int round = 0; round < ROUNDS; round++) {
      WireReader reader = new WireReader(new Faults());
      long before = threads.getCurrentThreadAllocatedBytes();
      long began = System.nanoTime();
      heard[0] += reader.accept(bytes).size();
      perSecond[round] = SENTENCES / ((System.nanoTime() - began) / 1e9);
      allocated[round] = threads.getCurrentThreadAllocatedBytes() - before;
    }
    if (heard[0] != SENTENCES * ROUNDS) {
      throw new AssertionError(heard[0] + " heard");
    }
    Arrays.sort(perSecond);
    System.out.printf(
        "| sentences a second, one core, the best and the median of %d | %.0f | %.0f |%n",
        ROUNDS, perSecond[ROUNDS - 1], perSecond[ROUNDS / 2]);
    System.out.printf(
        "| bytes allocated a sentence, of %.0f on the wire | %.0f | |%n",
        (double) bytes.length / SENTENCES, (double) allocated[ROUNDS - 1] / SENTENCES);
  }

  private static byte[] fourEdgesABeat() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int i = 0; i < SENTENCES; i++) {
      int line = i & 0xFFFF;
      String body =
          i % 5 < 4
              ? "E,%d,7,%d,%c,%c,%d,0"
                  .formatted(
                      line, i + 1, "AB".charAt(i % 2), "BC".charAt(i / 2 % 2), 6_948_708L + i)
              : "H,%d,7,%d,0,%d,0,0,CC,812,807,5012,2150,1875,5510"
                  .formatted(line, 6_948_708L + i, i);
      byte[] ascii = body.getBytes(StandardCharsets.US_ASCII);
      String whole =
          String.format(Locale.ROOT, "$%s*%04X\r\n", body, Crc16.of(ascii, 0, ascii.length));
      out.writeBytes(whole.getBytes(StandardCharsets.US_ASCII));
    }
    return out.toByteArray();
  }
}
