package castwell.web;

import castwell.capture.wire.Crc16;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** What a board says, sentence by sentence, a second after the other by its own clock. */
final class SaidByBoard {
  private int line = 100;
  private int second = 10;

  byte[] identity() {
    return line("I,%d,1,sim-1,gate-1,7,2000000,2,0,0,64,P".formatted(line++));
  }

  /**
   * @param levels of gate A and gate B, C or B each
   */
  byte[] beat(String levels, int lightA, int lightB) {
    return line(
        "H,%d,7,%d,0,12,0,0,%s,%d,%d,5012,2150,1875,5510"
            .formatted(line++, second++ * 2_000_000L, levels, lightA, lightB));
  }

  private static byte[] line(String body) {
    byte[] bytes = body.getBytes(StandardCharsets.US_ASCII);
    return "$%s*%s\r\n"
        .formatted(body, String.format(Locale.ROOT, "%04X", Crc16.of(bytes, 0, bytes.length)))
        .getBytes(StandardCharsets.US_ASCII);
  }
}
