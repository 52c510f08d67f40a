package castwell.web;

import castwell.capture.Until;
import castwell.capture.device.PseudoTerminal;
import castwell.capture.wire.Crc16;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;

/** A board of which a test types every sentence: the arrows it wants, when it wants them. */
final class TypedBoard implements AutoCloseable {
  private static final double GATE_SPACING_M = 0.6096; // the settings' own
  private static final int HZ = 2_000_000;
  private static final long DRAW_NANOS = 50_000_000;
  private static final long LINE_BYTES = 70;
  private static final long WIRE_BYTES_PER_SECOND = 11_520;

  private final PseudoTerminal wire = new PseudoTerminal();
  private final long begun = System.nanoTime();
  private int line = 100;
  private int edges;

  /** Where the host finds it. */
  Path port() {
    return wire.port();
  }

  /** Answers the host's first question. */
  void answer() {
    wire.read();
    say("I,1,typed-1,gate-1,7,%d,2,0,0,64,P".formatted(HZ));
    beat();
  }

  /** Composed as long ago as its line would take on a real wire, lest shots be dated too early. */
  void beat() {
    long composed = ticks() - LINE_BYTES * HZ / WIRE_BYTES_PER_SECOND;
    say("H,7,%d,0,%d,0,0,CC,812,807,5012,2150,1875,5510".formatted(Math.max(0, composed), edges));
  }

  /**
   * A clean passage, now. Without a beat of its own: beats as close together as these shots tell no
   * rate to date them by.
   */
  void arrow(double mps, double lengthM) {
    double[] after = {0, GATE_SPACING_M, lengthM, GATE_SPACING_M + lengthM};
    shoot(mps, after);
  }

  /** One whose tail gate B doesn't see. */
  void misread(double mps) {
    shoot(mps, new double[] {0, GATE_SPACING_M, 0.73});
  }

  /** Not at once: a shot is dated to some milliseconds, and whoever chose an arrow then draws. */
  private void shoot(double mps, double[] metres) {
    long chosen = System.nanoTime();
    Until.holds("the draw", () -> System.nanoTime() - chosen > DRAW_NANOS);
    long first = ticks();
    for (int i = 0; i < metres.length; i++) {
      long at = first + Math.round(metres[i] / mps * HZ);
      say(
          "E,7,%d,%s,%s,%d,0"
              .formatted(++edges, i % 2 == 0 ? "A" : "B", i < 2 ? "B" : "C", at & 0xFFFF_FFFFL));
    }
  }

  private long ticks() {
    return (System.nanoTime() - begun) / (1_000_000_000L / HZ);
  }

  /**
   * @param sentence with its type, but without line number and check sum
   */
  void say(String sentence) {
    String body = sentence.replaceFirst(",", "," + line++ + ",");
    byte[] bytes = body.getBytes(StandardCharsets.US_ASCII);
    String whole =
        String.format(Locale.ROOT, "$%s*%04X\r%n", body, Crc16.of(bytes, 0, bytes.length));
    wire.write(whole.getBytes(StandardCharsets.US_ASCII));
  }

  void key(char press) {
    say("K,7,1,%c,%d".formatted(press, ticks() & 0xFFFF_FFFFL));
  }

  @Override
  public void close() {
    wire.close();
  }
}
