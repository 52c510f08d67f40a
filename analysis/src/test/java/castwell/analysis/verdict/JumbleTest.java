package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.Seed;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("slow")
class JumbleTest {
  private static final long SEED = Seed.of(JumbleTest.class);

  @Test
  void whateverComesItIsJudgedAndWhatCountsHasSpeedAndLength() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int round = 0; round < 20_000; round++) {
      Assessment assessment = Bench.assess(jumble(random));
      Verdict verdict = assessment.verdict();
      if (verdict.counts()) {
        double speedMps = assessment.measurement().speed().orElseThrow().value();
        double lengthM = assessment.measurement().length().orElseThrow().value();
        assertThat(speedMps).as("seed %d, round %d", SEED, round).isBetween(20.0, 130.0);
        assertThat(lengthM).as("seed %d, round %d", SEED, round).isBetween(0.5, 1.0);
      }
      assertThat(verdict.reasons())
          .as("seed %d, round %d", SEED, round)
          .allMatch(reason -> reason.code().matches("[a-z]+(-[a-z]+)*"))
          .allMatch(reason -> !reason.told().isEmpty())
          .noneMatch(reason -> reason.told().toString().matches(".*(NaN|Infinity|-\\d).*"));
    }
  }

  @Test
  void aMisreadHasAReason() {
    assertThatThrownBy(() -> new Misread(List.of())).isInstanceOf(IllegalArgumentException.class);
  }

  private static Passage jumble(SplittableRandom random) {
    List<Edge> edges = new ArrayList<>();
    int count = 1 + random.nextInt(8);
    for (int i = 0; i < count; i++) {
      Gate gate = Gate.values()[random.nextInt(2)];
      EdgeKind kind = EdgeKind.values()[random.nextInt(20) == 0 ? 2 : random.nextInt(2)];
      // Coarse, so that stamps often fall on the very same tick.
      long ticks = 2500L * random.nextInt(24);
      edges.add(new Edge(1, gate, kind, ticks, random.nextInt(3) == 0 ? 40 : 0));
    }
    return Passages.stamped(edges);
  }
}
