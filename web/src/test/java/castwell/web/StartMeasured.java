package castwell.web;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How long it takes from the command to the first page, its board heard. See .ci/measure. */
class StartMeasured {
  private static final int TIMES = Integer.getInteger("castwell.times", 9);

  @TempDir Path folder;

  @Test
  void fromTheCommandToTheFirstPage() throws IOException {
    List<Double> seconds = new ArrayList<>();
    for (int i = -1; i < TIMES; i++) { // the first makes the data folder
      double took = once();
      if (i >= 0) {
        seconds.add(took);
      }
    }
    seconds.sort(null);
    System.out.printf(
        "| start to first page, s, the least and the median of %d (%s) | %.2f | %.2f |%n",
        TIMES, Shipped.COMMAND, seconds.get(0), seconds.get(TIMES / 2));
  }

  private double once() throws IOException {
    try (TypedBoard board = new TypedBoard()) {
      long began = System.nanoTime();
      try (Shipped castwell =
          Shipped.start(
              "--data",
              folder.toString(),
              "run",
              "--port",
              board.port().toString(),
              "--http",
              "0")) {
        URI page = castwell.page();
        Shipped.get(page);
        double took = (System.nanoTime() - began) / 1e9;
        board.answer();
        return took;
      }
    }
  }
}
