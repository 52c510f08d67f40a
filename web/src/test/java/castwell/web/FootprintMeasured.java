package castwell.web;

import castwell.capture.Until;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the program takes of a computer: memory after a day's shooting with five readers, and the
 * processor while a board only beats. The day is told in a minute or two. See .ci/measure.
 */
class FootprintMeasured {
  private static final int SHOTS = 300;
  private static final int BEATS_BETWEEN = 8 * 3600 / SHOTS;
  private static final int READERS = 5;
  private static final int IDLE_SECONDS = Integer.getInteger("castwell.seconds", 60);
  private static final List<String> PAGES =
      List.of("", "rack", "sessions", "arrows", "calibration", "data", "api/range", "api/health");

  @TempDir Path folder;

  @Test
  void memoryAndProcessor() throws IOException {
    try (TypedBoard board = new TypedBoard();
        Shipped castwell =
            Shipped.start(
                "--data",
                folder.toString(),
                "run",
                "--port",
                board.port().toString(),
                "--http",
                "0")) {
      URI page = castwell.page();
      board.answer();
      List<FeedReader> readers = new ArrayList<>();
      for (int i = 0; i < READERS; i++) {
        readers.add(FeedReader.prompt(page.resolve("api/live")));
      }
      double started = castwell.residentMib();
      double most = started;
      for (int i = 0; i < SHOTS; i++) {
        for (int beat = 0; beat < BEATS_BETWEEN; beat++) {
          board.beat();
        }
        board.arrow(50 + i % 7, 0.72);
        for (FeedReader reader : readers) {
          reader.anyOf("shot");
        }
        Shipped.get(page.resolve(PAGES.get(i % PAGES.size())));
        most = Math.max(most, castwell.residentMib());
      }
      System.out.printf(
          "| resident, MiB: at the start, the most over %d shots, %d beats, %d readers and %d pages, at the end | %.0f | %.0f | %.0f |%n",
          SHOTS, SHOTS * BEATS_BETWEEN, READERS, SHOTS, started, most, castwell.residentMib());
      double used = idle(board, castwell);
      System.out.printf(
          "| processor while a board beats each second, %% of one core over %d s | %.2f |%n",
          IDLE_SECONDS, 100 * used / IDLE_SECONDS);
      for (FeedReader reader : readers) {
        reader.close();
      }
    }
  }

  private static double idle(TypedBoard board, Shipped castwell) throws IOException {
    double before = castwell.processorSeconds();
    for (int second = 0; second < IDLE_SECONDS; second++) {
      board.beat();
      long now = System.nanoTime();
      Until.holds("a second", () -> System.nanoTime() - now > 1_000_000_000L);
    }
    return castwell.processorSeconds() - before;
  }
}
