package castwell.web;

import castwell.capture.Until;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long it takes from a passage's last byte on a serial line until its event, committed, is at a
 * reader of the live feed, without the quiet time that makes a passage whole; and how long gpsd
 * takes from a sentence on another line to its reader, turn by turn. See .ci/measure.
 */
class LatencyMeasured {
  private static final int WARM_UP = 100;
  private static final int TIMES = Integer.getInteger("castwell.times", 500);
  private static final double QUIET_MS = 10; // the settings' own
  private static final Duration PAUSE = Duration.ofMillis(60);

  @TempDir Path folder;

  @Test
  void fromTheLineToTheReader() throws IOException {
    List<Double> shots = new ArrayList<>();
    List<Double> fixes = new ArrayList<>();
    try (TypedBoard board = new TypedBoard();
        Shipped castwell =
            Shipped.start(
                "--data",
                folder.toString(),
                "run",
                "--port",
                board.port().toString(),
                "--http",
                "0");
        SatelliteReceiver receiver = SatelliteReceiver.start()) {
      URI page = castwell.page();
      board.answer();
      try (FeedReader feed = FeedReader.prompt(page.resolve("api/live"))) {
        for (int i = -WARM_UP; i < TIMES; i++) {
          if (i % 20 == 0) {
            board.beat();
          }
          board.arrow(50 + i % 7, 0.72);
          long written = System.nanoTime();
          feed.anyOf("shot");
          double shotMs = (System.nanoTime() - written) / 1e6 - QUIET_MS;
          double fixMs = receiver.fixMs();
          if (i >= 0) {
            shots.add(shotMs);
            fixes.add(fixMs);
          }
          long now = System.nanoTime();
          Until.holds("a pause", () -> System.nanoTime() - now > PAUSE.toNanos());
        }
      }
    }
    System.out.println("| ms, " + TIMES + " times in turn | p50 | p99 |");
    System.out.println("|---|---:|---:|");
    tell("Castwell, shot to live feed, without the 10 ms of quiet", shots);
    tell("gpsd, sentence to JSON reader", fixes);
    System.out.printf(
        "| ratio | %.1f | %.1f |%n", at(shots, 50) / at(fixes, 50), at(shots, 99) / at(fixes, 99));
  }

  private static void tell(String what, List<Double> ms) {
    System.out.printf("| %s | %.2f | %.2f |%n", what, at(ms, 50), at(ms, 99));
  }

  private static double at(List<Double> ms, int percent) {
    return ms.stream().sorted().skip((long) ms.size() * percent / 100).findFirst().orElseThrow();
  }
}
