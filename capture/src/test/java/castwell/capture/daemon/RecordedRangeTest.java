package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Truth: the recordings' own, made with them. */
class RecordedRangeTest {
  private static final List<String> NAMES =
      List.of("clean-five", "counter-wrap", "every-trouble-once", "resonator-clock");

  @TempDir Path folder;

  private static Path file(String name) throws Exception {
    return Path.of(RecordedRangeTest.class.getResource("/recordings/" + name).toURI());
  }

  private static void check(RangeBench bench, String name) throws Exception {
    double tolerance = name.equals("resonator-clock") ? 0.05e-2 : 0.01e-2;
    TruthCheck.check(bench.shots(name), Truth.read(file(name + ".truth.csv")), tolerance);
  }

  @ParameterizedTest
  @ValueSource(strings = {"clean-five", "counter-wrap", "every-trouble-once", "resonator-clock"})
  void everyPassageIsWhatItWas(String name) throws Exception {
    try (RangeBench bench = RangeBench.in(folder)) {
      bench.replay(file(name + ".rec"));
      check(bench, name);
      Map<String, Long> before = bench.tables().rows();
      bench.replay(file(name + ".rec"));
      assertThat(bench.tables().rows()).isEqualTo(before);
      check(bench, name);
    }
  }

  /** They share device, boot and edge numbers, as boards with a reset boot counter would. */
  @Test
  void recordingsOfOneNameAreKeptApartInOneStore() throws Exception {
    long seed = Seed.of(RecordedRangeTest.class);
    List<String> order = new ArrayList<>(NAMES);
    Collections.shuffle(order, new Random(seed));
    try (RangeBench bench = RangeBench.in(folder)) {
      for (String name : order) {
        bench.replay(file(name + ".rec"));
      }
      checkAll(bench, order);
      Map<String, Long> before = bench.tables().rows();
      Collections.shuffle(order, new Random(seed + 1));
      for (String name : order) {
        bench.replay(file(name + ".rec"));
        assertThat(bench.tables().rows()).as(name + " again, seed " + seed).isEqualTo(before);
      }
      checkAll(bench, order);
    }
  }

  private static void checkAll(RangeBench bench, List<String> names) throws Exception {
    for (String name : names) {
      check(bench, name);
    }
  }
}
