package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.unit.Units;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Insects, flutter, bounces, spoilt edges, arrows close together and what is no arrow, made by an
 * independent generator with known truth: 442 objects, bytes on the wire.
 */
class EdgeRecordingsTest {
  private static final double REACHED = 2.5;

  @TempDir Path folder;

  private static Path file(String name) throws Exception {
    return Path.of(EdgeRecordingsTest.class.getResource("/recordings/edges/" + name).toURI());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "flutter-and-bounce",
        "insects-about-arrows",
        "no-arrows",
        "one-edge-spoilt",
        "two-arrows-and-what-comes-back"
      })
  void everyObjectIsReadAsItWas(String name) throws Exception {
    assertThat(readOtherwise(name)).isEmpty();
  }

  /** Of so many one may lie farther off than its uncertainty reaches, by chance. */
  @Test
  void aLongEveningIsReadAsItWas() throws Exception {
    assertThat(readOtherwise("a-long-evening")).hasSizeLessThanOrEqualTo(1);
  }

  private List<String> readOtherwise(String name) throws Exception {
    List<Truth> truths = Truth.read(file(name + ".truth.csv"));
    List<String> otherwise = new ArrayList<>();
    try (RangeBench bench = RangeBench.in(folder)) {
      bench.replay(file(name + ".rec"));
      List<Shot> counting = new ArrayList<>(bench.shots(name));
      counting.removeIf(shot -> !shot.counts());
      for (int i = 0; i < truths.size(); i++) {
        Truth truth = truths.get(i);
        int next = i + 1 < truths.size() ? truths.get(i + 1).firstEdge() : Integer.MAX_VALUE;
        Optional<Shot> read = read(counting, truth, next);
        read.ifPresent(counting::remove);
        if (!isAsItWas(read, truth)) {
          otherwise.add(
              truth
                  + " was read as "
                  + bench.shots(name).stream()
                      .filter(shot -> isWithin(shot, truth.firstEdge(), next))
                      .toList());
        }
      }
    }
    return otherwise;
  }

  /** The shot that counts and is nearest to what was there, of those with edges of that stretch. */
  private static Optional<Shot> read(List<Shot> counting, Truth truth, int next) {
    return counting.stream()
        .filter(shot -> isWithin(shot, truth.firstEdge(), next))
        .filter(shot -> truth.counts() || edges(shot).firstEdge() >= truth.firstEdge())
        .min(Comparator.comparingDouble(shot -> offMps(shot, truth)));
  }

  private static boolean isWithin(Shot shot, int first, int next) {
    return edges(shot).lastEdge() >= first && edges(shot).firstEdge() < next;
  }

  private static Shot.ByGates edges(Shot shot) {
    return shot.byGates().orElseThrow();
  }

  private static double offMps(Shot shot, Truth truth) {
    return Math.abs(
        shot.figure().speedMps().orElseThrow() - truth.speedFps() * Units.METRES_PER_FOOT);
  }

  private static boolean isAsItWas(Optional<Shot> read, Truth truth) {
    return truth.counts()
        ? read.filter(shot -> offMps(shot, truth) <= REACHED * ownU(shot)).isPresent()
        : read.isEmpty();
  }

  private static double ownU(Shot shot) {
    return shot.figure().speedUOwnMps().orElseThrow();
  }
}
