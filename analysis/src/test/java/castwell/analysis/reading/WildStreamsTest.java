package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.analysis.reading.Trial.Judged;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.speed.Flight;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Edges in any order, of any kind, lost or not. */
@Tag("slow")
class WildStreamsTest {
  /** 210 whole candidates and 40 halves at each gate. */
  private static final int MOST_TRIED = 210 * 210 + 2 * 210 * 40;

  @Test
  void areReadWithBoundedWorkAndEveryEdgeHasAPart() {
    long seed = Seed.of(WildStreamsTest.class);
    SplittableRandom random = new SplittableRandom(seed);
    Knowledge knowledge = Knowledge.of(Flight.CALIBRATION, Limits.defaults());
    for (int round = 0; round < 1000; round++) {
      List<Edge> edges = wild(random);
      List<Judged> read = Trial.read(edges, knowledge);

      assertThat(read.stream().mapToInt(judged -> judged.passage().edges().size()).sum())
          .as("seed %d, round %d", seed, round)
          .isEqualTo(edges.size());
      for (Judged judged : read) {
        Reading reading = judged.assessment().reading();
        assertThat(reading.parts().keySet())
            .as("seed %d, round %d", seed, round)
            .hasSize(judged.passage().edges().size());
        assertThat(reading.parts().values()).doesNotContainNull();
        assertThat(reading.work().tried()).isLessThanOrEqualTo(MOST_TRIED);
        assertThat(reading.best().costNats()).isFinite();
      }
    }
  }

  private static List<Edge> wild(SplittableRandom random) {
    List<Edge> edges = new ArrayList<>();
    int count = 1 + random.nextInt(200);
    int widest = 1 << (4 + random.nextInt(14));
    long ticks = 0;
    int number = 1;
    for (int i = 0; i < count; i++) {
      ticks += random.nextInt(widest);
      number += random.nextInt(40) == 0 ? 2 : 1;
      EdgeKind kind = EdgeKind.values()[random.nextInt(20) == 0 ? 2 : random.nextInt(2)];
      int late = random.nextInt(5) == 0 ? 20 : 0;
      edges.add(new Edge(number, Gate.values()[random.nextInt(2)], kind, ticks, late));
    }
    return edges;
  }
}
