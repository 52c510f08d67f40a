package castwell.capture.daemon;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Truth: what the generator sent through its gates. */
class DisturbedRangeTest {
  @TempDir Path folder;

  @Test
  void everyPassageIsWhatItWas() throws Exception {
    long base = Long.getLong("seed", System.nanoTime());
    int count = Integer.getInteger("seeds", 200);
    List<String> failures = new ArrayList<>();
    try (RangeBench bench = RangeBench.in(folder)) {
      for (long seed = base; seed < base + count; seed++) {
        DisturbedRange range = DisturbedRange.of(seed);
        Path file = range.writeTo(folder);
        try {
          bench.replay(file);
          TruthCheck.check(bench.shots(range.name()), range.truths(), range.speedTolerance());
        } catch (AssertionError | RuntimeException e) {
          StringBuilder b = new StringBuilder();
          for (Truth t : range.truths()) b.append("  T " + t + "\n");
          bench
              .shots(range.name())
              .forEach(
                  x ->
                      b.append(
                          "  S "
                              + x.session()
                              + " "
                              + x.fired()
                              + " hz "
                              + x.figure().hz()
                              + " "
                              + x.boot()
                              + ","
                              + x.firstEdge()
                              + ".."
                              + x.lastEdge()
                              + " "
                              + x.counts()
                              + " "
                              + x.reason()
                              + " "
                              + x.figure().speedMps().orElse(0) / .3048
                              + "\n"));
          failures.add(
              "seed "
                  + seed
                  + ": "
                  + e.toString()
                      .replaceAll("\\s+", " ")
                      .replaceAll(
                          ".*to contain exactly in any order.*(elements? (un|not |were )?.*)", "$1")
                  + "\n"
                  + b);
        }
      }
    }
    failures.forEach(f -> System.out.println("FAIL " + f));
    System.out.println(failures.size() + " of " + count + " failed");
    if (!failures.isEmpty()) throw new AssertionError(failures.size() + " failed");
  }
}
