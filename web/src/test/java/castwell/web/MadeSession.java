package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.wire.Crc16;
import castwell.web.cli.Castwell;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/**
 * A recording of a session's arrows, one every twenty seconds, shot through gates with which
 * something is the matter or nothing. Each edge scatters by half a millimetre.
 *
 * @param slowed what share of their speed tails lose, as where a butt is too near
 * @param spacingM the true spacing; 609.6 mm is stated
 * @param mps the least speed
 * @param day on which it was shot
 */
record MadeSession(double slowed, double spacingM, double mps, String day) {
  static final int ARROWS = 24;
  static final double LENGTH_M = 0.7366; // 29 in
  private static final int HZ = 2_000_000;
  private static final int EVERY_S = 20;
  private static final double TRIGGER_M = 0.0005;
  private static final String[] STAMPED = {"A,B", "B,B", "A,C", "B,C"};

  /** Replays it, shot with a bow and an arrow of the rack. */
  void replayInto(Path data, String bow, String arrow) throws IOException {
    Path file =
        Files.writeString(Files.createTempDirectory("made").resolve("range.rec"), written());
    assertThat(
            Castwell.run(
                "replay",
                "--data",
                data.toString(),
                "--bow",
                bow,
                "--arrow",
                arrow,
                file.toString()))
        .isZero();
  }

  private String written() {
    StringBuilder lines = new StringBuilder();
    lines.append(
        """
        # recording: 1
        # name: range
        # started: %sT09:00:00Z
        # gate-spacing-mm: 609.600
        # gate-spacing-u-mm: 0.25
        # gates-from-bow-m: 2.0
        """
            .formatted(day));
    say(lines, 0, "I,100,1,sim-1,gate-1,%d,%d,2,0,0,64,P".formatted(boot(), HZ));
    Random random = new Random(20260501);
    int line = 101;
    int edges = 0;
    for (int second = 1; second <= EVERY_S * (ARROWS + 1); second++) {
      long ticks = (long) second * HZ;
      String beat = "H,%d,%d,%d,0,%d,0,0,CC,812,807,5012,2150,1875,5510";
      say(lines, ticks, beat.formatted(line++, boot(), ticks, edges));
      if (second % EVERY_S == 0 && edges < 4 * ARROWS) {
        for (long stamp : arrow(ticks + HZ / 2, random)) {
          String edge =
              "E,%d,%d,%d,%s,%d,0".formatted(line++, boot(), edges + 1, STAMPED[edges % 4], stamp);
          say(lines, stamp, edge);
          edges++;
        }
      }
    }
    return lines.toString();
  }

  /** Each day has a boot of its own, lest its edges be taken for another's. */
  private int boot() {
    return Integer.parseInt(day.substring(5).replace("-", ""));
  }

  private long[] arrow(long start, Random random) {
    double shot = mps + random.nextDouble();
    double[] seconds = {
      at(0, random) / shot,
      at(spacingM, random) / shot,
      at(LENGTH_M, random) / shot,
      at(LENGTH_M, random) / shot + spacingM / (shot * (1 - slowed))
    };
    long[] ticks = new long[seconds.length];
    for (int i = 0; i < ticks.length; i++) {
      ticks[i] = start + (long) Math.floor(seconds[i] * HZ);
    }
    return ticks;
  }

  private static double at(double metres, Random random) {
    return metres + TRIGGER_M * random.nextGaussian();
  }

  private static void say(StringBuilder lines, long ticks, String body) {
    byte[] bytes = body.getBytes(StandardCharsets.US_ASCII);
    int sum = Crc16.of(bytes, 0, bytes.length);
    long micros = ticks / 2 + 5_000;
    lines.append(String.format(Locale.ROOT, "%d $%s*%04X%n", micros, body, sum));
  }
}
