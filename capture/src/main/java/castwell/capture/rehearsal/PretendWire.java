package castwell.capture.rehearsal;

import static java.nio.charset.StandardCharsets.US_ASCII;

import castwell.capture.wire.Crc16;
import java.io.ByteArrayOutputStream;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;

/**
 * The pretended wire from board to host, which numbers the lines and carries them at 115200 baud.
 */
final class PretendWire {
  /** The time a byte takes: ten bits, which are a start bit, eight data bits and a stop bit. */
  static final double MICROS_PER_BYTE = 10 * 1e6 / 115200;

  private record Sending(byte[] bytes, double doneMicros) {}

  private final Deque<Sending> sendings = new ArrayDeque<>();
  private double freeMicros;
  private int line;

  PretendWire(Random random) {
    line = random.nextInt(1 << 16);
  }

  static String fields(Object... fields) {
    return Arrays.stream(fields).map(String::valueOf).collect(Collectors.joining(","));
  }

  /** How many bytes wait to be sent. */
  int queuedBytes(double nowMicros) {
    return (int) Math.ceil(Math.max(0, freeMicros - nowMicros) / MICROS_PER_BYTE);
  }

  /**
   * Sends a sentence, unless its fate is to be lost.
   *
   * @param type the sentence's letter
   * @param fields all fields after the line number
   */
  void send(double nowMicros, char type, String fields, Happening.Fate fate) {
    String body = type + "," + line + "," + fields;
    line = line + 1 & 0xFFFF;
    byte[] bytes = body.getBytes(US_ASCII);
    String crc = String.format(Locale.ROOT, "%04X", Crc16.of(bytes, 0, bytes.length));
    byte[] sentence = ("$" + body + "*" + crc + "\r\n").getBytes(US_ASCII);
    switch (fate) {
      case SENT -> raw(nowMicros, sentence);
      case LOST -> {}
      case CORRUPTED -> {
        sentence[sentence.length / 2] ^= 1;
        raw(nowMicros, sentence);
      }
      case REPEATED -> {
        raw(nowMicros, sentence);
        send(nowMicros, type, fields, Happening.Fate.SENT);
      }
    }
  }

  void raw(double nowMicros, byte[] bytes) {
    freeMicros = Math.max(freeMicros, nowMicros) + bytes.length * MICROS_PER_BYTE;
    sendings.add(new Sending(bytes, freeMicros));
  }

  /** When the next line is through; infinity when none waits. */
  double nextMicros() {
    return sendings.isEmpty() ? Double.POSITIVE_INFINITY : sendings.peek().doneMicros();
  }

  /** Takes out the lines that came through by now. */
  byte[] takeDue(double nowMicros) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    while (nextMicros() <= nowMicros) {
      bytes.writeBytes(sendings.remove().bytes());
    }
    return bytes.toByteArray();
  }
}
