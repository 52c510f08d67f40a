package castwell.capture.daemon;

import static java.nio.charset.StandardCharsets.US_ASCII;

import castwell.capture.recording.RecordedLine;
import castwell.capture.wire.Crc16;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;

/**
 * The way from a board to a recording: 115200 baud, and a host that hears each line a little late.
 * Times are true seconds since the recording began.
 */
final class PaperWire {
  private static final double BYTES_PER_SECOND = 115_200 / 10.0;

  /** How a line fares between board and host. */
  enum Fate {
    SENT,
    LOST,
    CORRUPTED,
    TWICE
  }

  private final double mostDelaySeconds;
  private final Random random;
  private final List<RecordedLine> lines = new ArrayList<>();
  private int line;
  private double wireFree;
  private double lastHeard;

  PaperWire(int firstLine, double mostDelaySeconds, Random random) {
    this.line = firstLine;
    this.mostDelaySeconds = mostDelaySeconds;
    this.random = random;
  }

  void restart() {
    line = 0;
  }

  /** How many bytes wait. */
  long queued(double now) {
    return Math.round(Math.max(0, wireFree - now) * BYTES_PER_SECOND);
  }

  /** The wire takes nothing more for so long; what the board says meanwhile waits in its queue. */
  void holdUp(double now, double howLong) {
    wireFree = Math.max(wireFree, now + howLong);
  }

  /** The host is busy and hears nothing for so long; then all at once. */
  void keepHostBusy(double now, double howLong) {
    lastHeard = Math.max(lastHeard, now + howLong);
  }

  void say(double now, Fate fate, String type, String fields) {
    String body = type + "," + line + "," + fields;
    line = line + 1 & 0xFFFF;
    byte[] bytes = body.getBytes(US_ASCII);
    byte[] sentence =
        ("$" + body + String.format(Locale.ROOT, "*%04X", Crc16.of(bytes, 0, bytes.length)))
            .getBytes(US_ASCII);
    if (fate == Fate.CORRUPTED) {
      spoil(sentence);
    }
    if (fate != Fate.LOST) {
      hear(now, sentence);
    }
  }

  /** Changes up to three bytes between the dollar and the star, mostly to other digits. */
  private void spoil(byte[] sentence) {
    byte[] before = sentence.clone();
    while (Arrays.equals(sentence, before)) {
      for (int i = random.nextInt(3); i >= 0; i--) {
        sentence[1 + random.nextInt(sentence.length - 6)] =
            (byte) (random.nextInt(4) > 0 ? '0' + random.nextInt(10) : 0x20 + random.nextInt(95));
      }
    }
  }

  void hear(double now, byte[] bytes) {
    wireFree = Math.max(wireFree, now) + (bytes.length + 2) / BYTES_PER_SECOND;
    double heard = wireFree + mostDelaySeconds * random.nextDouble();
    lastHeard = Math.max(lastHeard, heard);
    lines.add(new RecordedLine(Math.round(lastHeard * 1e6), bytes));
  }

  /** The recording's text below its header. */
  String text() {
    return lines.stream().map(l -> l + "\n").collect(Collectors.joining());
  }
}
